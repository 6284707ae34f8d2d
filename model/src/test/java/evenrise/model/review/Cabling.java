package evenrise.model.review;

import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Practice;
import evenrise.model.project.ReferenceMethod;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Cables, circuits and practices for tests. */
final class Cabling {
    static final Electrical NEC =
            new Electrical(Optional.of(Practice.NEC), Optional.empty(), Optional.empty(), java.util.List.of());
    static final Electrical IEC =
            new Electrical(Optional.of(Practice.IEC), Optional.empty(), Optional.empty(), java.util.List.of());

    private Cabling() {}

    static Cable cable(String size, double lengthMetres) {
        return cable(size, lengthMetres, OptionalDouble.empty(), OptionalInt.empty());
    }

    static Cable cable(String size, double lengthMetres, OptionalDouble conductorCelsius, OptionalInt together) {
        return new Cable(
                lengthMetres,
                size,
                ConductorMaterial.COPPER,
                1,
                Conduit.NONMETALLIC,
                ReferenceMethod.B1,
                conductorCelsius,
                OptionalDouble.empty(),
                together,
                OptionalInt.empty(),
                OptionalDouble.empty());
    }

    /** Of insulation for 90 °C on terminals for 60 or 75 °C. */
    static Cable insulated(Cable it) {
        return new Cable(
                it.lengthMetres(),
                it.size(),
                it.material(),
                it.sets(),
                it.conduit(),
                it.method(),
                it.conductorCelsius(),
                OptionalDouble.of(90),
                it.conductorsTogether(),
                it.circuitsTogether(),
                it.ambientCelsius());
    }

    static Circuit circuit(Cable cable) {
        return new Circuit(Optional.of(cable), true, false, OptionalDouble.empty(), 1);
    }

    static Circuit bare(boolean isContinuous, boolean isFullyRated) {
        return new Circuit(Optional.empty(), isContinuous, isFullyRated, OptionalDouble.empty(), 1);
    }

    static Feeder feeder(Cable cable, double breakerAmps) {
        return new Feeder(Optional.of(cable), OptionalDouble.of(breakerAmps), false);
    }
}
