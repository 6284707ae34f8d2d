package evenrise.model.rules;

import evenrise.model.electrical.VoltageBand;
import evenrise.model.project.Electrical;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.project.VoltageRange;
import java.util.Optional;

/**
 * Voltages that a project's supply may have, as it states them or as its practice has it, and those that its scatter draws.
 *
 * @param from where they come from, for people
 * @param isAssumed whether the project states none
 */
public record SupplyVoltage(VoltageBand band, String from, boolean isAssumed) {
    /** The nominal voltage alone. */
    public static final SupplyVoltage NOMINAL = new SupplyVoltage(VoltageBand.NOMINAL, "nominal", false);

    /** 114 to 126 V at the service of a 120 V system, 108 V at the equipment (the latter from memory). */
    private static final VoltageBand RANGE_A = new VoltageBand(108.0 / 120, 126.0 / 120);

    private static final VoltageBand TEN_PERCENT = new VoltageBand(0.9, 1.1);

    public static SupplyVoltage of(Project project) {
        SupplyVoltage steady = steady(project);
        return project.scatter()
                .map(scatter -> steady.with(scatter))
                .filter(both -> !both.band.equals(steady.band))
                .orElse(steady);
    }

    /** The project's scatter; where it states none, the usual one, which draws no voltage that the supply does not have. */
    public static Scatter scatter(Project project) {
        VoltageBand band = of(project).band;
        return project.scatter().orElseGet(() -> Scatter.usualWithin(band.leastRatio(), band.mostRatio()));
    }

    /** The voltages of both. */
    public SupplyVoltage with(Scatter scatter) {
        VoltageBand drawn =
                new VoltageBand(Math.min(1, scatter.leastVoltageRatio()), Math.max(1, scatter.mostVoltageRatio()));
        return new SupplyVoltage(band.and(drawn), from + " and what scatter draws", isAssumed);
    }

    private static SupplyVoltage steady(Project project) {
        Optional<VoltageRange> stated = project.supply().voltageRange();
        if (stated.isPresent()) {
            return new SupplyVoltage(
                    new VoltageBand(
                            stated.get().leastPercent() / 100, stated.get().mostPercent() / 100),
                    "supply.voltage_range",
                    false);
        }
        boolean isAmerican = project.electrical().flatMap(Electrical::practice).equals(Optional.of(Practice.NEC));
        return isAmerican
                ? new SupplyVoltage(RANGE_A, "assumed: ANSI C84.1 range A", true)
                : new SupplyVoltage(TEN_PERCENT, "assumed: ±10 %, EN 50160 and IEC 60038", true);
    }
}
