package evenrise.model.review;

import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Practice;
import evenrise.model.project.ReferenceMethod;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Cables, circuits and practices for tests. */
final class Cabling {
    static final Electrical NEC = Electrical.builder().practice(Practice.NEC).build();
    static final Electrical IEC = Electrical.builder().practice(Practice.IEC).build();

    private Cabling() {}

    static Cable cable(String size, double lengthMetres) {
        return cable(size, lengthMetres, OptionalDouble.empty(), OptionalInt.empty());
    }

    static Cable cable(String size, double lengthMetres, OptionalDouble conductorCelsius, OptionalInt together) {
        return Cable.builder()
                .lengthMetres(lengthMetres)
                .size(size)
                .material(ConductorMaterial.COPPER)
                .sets(1)
                .conduit(Conduit.NONMETALLIC)
                .method(ReferenceMethod.B1)
                .conductorCelsius(conductorCelsius)
                .conductorsTogether(together)
                .build();
    }

    /** Of insulation for 90 °C on terminals for 60 or 75 °C. */
    static Cable insulated(Cable it) {
        return it.withInsulationCelsius(OptionalDouble.of(90));
    }

    static Circuit circuit(Cable cable) {
        return Circuit.builder()
                .cable(cable)
                .continuous(true)
                .fullyRated(false)
                .devices(1)
                .build();
    }

    static Circuit bare(boolean isContinuous, boolean isFullyRated) {
        return Circuit.builder()
                .continuous(isContinuous)
                .fullyRated(isFullyRated)
                .devices(1)
                .build();
    }

    static Feeder feeder(Cable cable, double breakerAmps) {
        return Feeder.builder()
                .cable(cable)
                .breakerAmps(breakerAmps)
                .fullyRated(false)
                .build();
    }
}
