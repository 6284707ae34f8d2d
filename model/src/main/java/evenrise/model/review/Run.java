package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.conductor.Ampacity;
import evenrise.model.electrical.conductor.ConductorImpedance;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Cable;
import evenrise.model.project.Electrical;
import evenrise.model.project.Installation;
import evenrise.model.project.Project;
import java.util.Optional;
import java.util.OptionalDouble;

/** A cable as it is laid in one project, protected by a device of one rating. */
record Run(Cable cable, ConductorSize size, double conductorCelsius, double ambientCelsius) {
    /** NEC 110.14(C)(1): terminals of devices up to this rating count as 60 °C unless marked (from memory). */
    private static final double COOL_TERMINALS_AMPS = 100;

    /** Empty where the size has no table; the reader reports that. */
    static Optional<Run> of(Project project, Cable cable, double breakerAmps) {
        double ambient = cable.ambientCelsius()
                .orElseGet(() -> project.electrical()
                        .flatMap(Electrical::installation)
                        .map(Installation::ambientCelsius)
                        .orElse(30.0));
        return ConductorSize.of(cable.size())
                .map(size -> new Run(cable, size, conductorCelsius(cable, size, breakerAmps), ambient));
    }

    /** Of one line conductor, its parallel sets together. */
    Impedance impedance() {
        return ConductorImpedance.of(cable, size, conductorCelsius);
    }

    /** By the table alone, its parallel sets together; empty where no table stands here. */
    OptionalDouble tabulatedAmps(int loaded) {
        OptionalDouble one = size.isMetric()
                ? conductorCelsius == 70
                        ? Ampacity.metric(size, cable.material(), cable.method(), loaded)
                        : OptionalDouble.empty()
                : Ampacity.american(size, cable.material(), conductorCelsius);
        return one.isPresent() ? OptionalDouble.of(cable.sets() * one.getAsDouble()) : one;
    }

    /** Corrected for the air and for what runs beside it. */
    OptionalDouble ampacityAmps(int loaded, int conductorsOfItsOwn) {
        OptionalDouble tabulated = tabulatedAmps(loaded);
        if (tabulated.isEmpty()) {
            return tabulated;
        }
        double insulation =
                size.isMetric() ? conductorCelsius : cable.insulationCelsius().orElse(conductorCelsius);
        OptionalDouble byInsulation =
                size.isMetric() ? tabulated : Ampacity.american(size, cable.material(), insulation);
        double group = size.isMetric()
                ? Ampacity.metricGroupFactor(cable.circuitsTogether().orElse(1))
                : Ampacity.americanGroupFactor(
                        Math.max(conductorsOfItsOwn, cable.conductorsTogether().orElse(conductorsOfItsOwn)));
        double ambient = Ampacity.ambientFactor(insulation, ambientCelsius, !size.isMetric());
        double sets = size.isMetric() ? 1 : cable.sets();
        double corrected = sets * byInsulation.orElseThrow() * ambient * group;
        // The terminals allow no more than their own column, which is not corrected.
        return OptionalDouble.of(size.isMetric() ? corrected : Math.min(tabulated.getAsDouble(), corrected));
    }

    /** How messages call it. */
    String text() {
        String sets = cable.sets() == 1 ? "" : cable.sets() + " × ";
        return sets
                + size.name()
                + (cable.material() == evenrise.model.project.ConductorMaterial.COPPER ? "" : " aluminium");
    }

    private static double conductorCelsius(Cable cable, ConductorSize size, double breakerAmps) {
        double usual = size.isMetric() ? 70 : breakerAmps <= COOL_TERMINALS_AMPS ? 60 : 75;
        return cable.conductorCelsius().orElse(usual);
    }
}
