package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.measured.MeasuredPlant;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What another plan could gain at most, told before anybody moves a breaker.
 *
 * @param plannedPeakAmps of the plan with currents as stated
 * @param measuredPeakAmps of the same plan with currents as measured
 * @param leastPeakAmps what no plan stays below, with currents as measured; empty where that was not asked for
 */
public record RenewalGain(double plannedPeakAmps, double measuredPeakAmps, OptionalDouble leastPeakAmps) {
    public static RenewalGain of(MeasuredPlant plant, OptionalDouble leastPeakAmps) {
        return new RenewalGain(
                plant.planned().metrics().peakInrushAmps(),
                plant.measured().metrics().peakInrushAmps(),
                leastPeakAmps);
    }

    /** For people. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        lines.add("Peak inrush at the supply: planned " + Decimals.fixed(plannedPeakAmps, 1)
                + " A, with what was measured " + Decimals.fixed(measuredPeakAmps, 1) + " A.");
        leastPeakAmps.ifPresent(least -> lines.add("No plan with what was measured stays below "
                + Decimals.fixed(least, 1) + " A, so a rework gains "
                + Decimals.fixed(Math.max(0, measuredPeakAmps - least), 1) + " A of peak at most."
                + (measuredPeakAmps - least > 0.05
                        ? " 'evenrise rework' on the project with what was measured says what few moves gain."
                        : "")));
        return lines;
    }
}
