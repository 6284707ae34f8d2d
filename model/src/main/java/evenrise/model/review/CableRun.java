package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.conductor.Ampacity;
import evenrise.model.electrical.conductor.ConductorImpedance;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.project.Cable;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Electrical;
import evenrise.model.project.Installation;
import evenrise.model.project.Project;
import java.util.Optional;
import java.util.OptionalDouble;

/** A cable as it is laid in one project, protected by a device of one rating. */
record CableRun(Cable cable, ConductorSize size, int sets, double conductorCelsius, double ambientCelsius) {
    /** NEC 110.14(C)(1): terminals of devices up to this rating count as 60 °C unless marked (from memory). */
    private static final double COOL_TERMINALS_AMPS = 100;

    private static final double TABULATED_CELSIUS = 75;

    /** Empty where the size has no table; the reader reports that. */
    static Optional<CableRun> of(Project project, Cable cable, double breakerAmps) {
        double ambient = cable.ambientCelsius()
                .orElseGet(() -> project.electrical()
                        .flatMap(Electrical::installation)
                        .map(Installation::ambientCelsius)
                        .orElse(30.0));
        return ConductorSize.of(cable.size())
                .map(size ->
                        new CableRun(cable, size, cable.sets(), conductorCelsius(cable, size, breakerAmps), ambient));
    }

    /** The same run of another size. */
    CableRun with(ConductorSize other, int otherSets) {
        return new CableRun(cable, other, otherSets, conductorCelsius, ambientCelsius);
    }

    /** Of one line conductor as it works, its parallel sets together. */
    Impedance impedance() {
        return impedance(workingCelsius());
    }

    /** The same at another temperature. */
    Impedance impedance(double celsius) {
        return of(size, cable.material(), celsius);
    }

    /** Of its protective conductors together, as warm as the lines; empty where none is stated. */
    Optional<Impedance> protective() {
        return cable.protectiveSize()
                .flatMap(ConductorSize::of)
                .map(each -> of(each, cable.protectiveMaterial().orElse(cable.material()), workingCelsius()));
    }

    /** American tables are for 75 °C, and a conductor that may reach less is not counted as cooler. */
    double workingCelsius() {
        return size.isMetric() ? conductorCelsius : Math.max(TABULATED_CELSIUS, conductorCelsius);
    }

    private Impedance of(ConductorSize each, ConductorMaterial material, double celsius) {
        return ConductorImpedance.perKilometre(each, material, cable.conduit(), celsius)
                .times(cable.lengthMetres() / 1000 / sets);
    }

    /** By the table alone, its parallel sets together; empty where no table stands here. */
    OptionalDouble tabulatedAmps(int loaded) {
        OptionalDouble one = size.isMetric()
                ? conductorCelsius == 70
                        ? Ampacity.metric(size, cable.material(), cable.method(), loaded)
                        : OptionalDouble.empty()
                : Ampacity.american(size, cable.material(), conductorCelsius);
        return one.isPresent() ? OptionalDouble.of(sets * one.getAsDouble()) : one;
    }

    /**
     * What it may carry, corrected for the air and for what runs beside it; empty where no table stands here.
     *
     * @param loaded conductors that carry current, as the tables count them: 2 or 3
     * @param conductorsOfItsOwn that carry current
     */
    Optional<Carrying> carrying(int loaded, int conductorsOfItsOwn) {
        double insulation = insulationCelsius();
        OptionalDouble column =
                size.isMetric() ? tabulatedAmps(loaded) : Ampacity.american(size, cable.material(), insulation);
        OptionalDouble terminals = tabulatedAmps(loaded);
        if (column.isEmpty() || terminals.isEmpty()) {
            return Optional.empty();
        }
        int together = size.isMetric()
                ? cable.circuitsTogether().orElse(1)
                : Math.max(conductorsOfItsOwn, cable.conductorsTogether().orElse(conductorsOfItsOwn));
        return Optional.of(new Carrying(
                size.isMetric() ? column.getAsDouble() / sets : column.getAsDouble(),
                size.isMetric()
                        ? "method " + cable.method().name() + ", " + loaded + " loaded"
                        : celsius(insulation) + " column",
                Ampacity.ambientFactor(insulation, ambientCelsius, !size.isMetric()),
                "air of " + celsius(ambientCelsius),
                size.isMetric() ? Ampacity.metricGroupFactor(together) : Ampacity.americanGroupFactor(together),
                together + (size.isMetric() ? " circuits" : " conductors") + " together",
                sets,
                size.isMetric() ? OptionalDouble.empty() : terminals,
                celsius(conductorCelsius) + " column"));
    }

    private double insulationCelsius() {
        return size.isMetric() ? conductorCelsius : cable.insulationCelsius().orElse(conductorCelsius);
    }

    private static String celsius(double celsius) {
        return Decimals.toThousandths(celsius) + " °C";
    }

    /** How messages call it. */
    String text() {
        return (sets == 1 ? "" : sets + " × ")
                + size.name()
                + (cable.material() == ConductorMaterial.COPPER ? "" : " aluminium");
    }

    private static double conductorCelsius(Cable cable, ConductorSize size, double breakerAmps) {
        double usual = size.isMetric() ? 70 : breakerAmps <= COOL_TERMINALS_AMPS ? 60 : 75;
        return cable.conductorCelsius().orElse(usual);
    }
}
