package evenrise.solver.bounds;

import evenrise.model.project.Load;
import evenrise.model.project.Project;

/**
 * How far from balance the supply's phases must be. Two reasons: a load with more than the mean unbalances its own phase,
 * and phases whose currents come in whole units cannot share a sum that the number of phases does not divide. The panels'
 * deviations add up to at least the supply's: a sum of deviations is never below the deviation of the sum.
 */
final class LeastDeviation {
    private static final double UNITS_AN_AMP = 1e6;

    /** Running currents are sums of many; what rounding may have added is taken off. */
    private static final double ROUNDING_AMPS = 1e-9;

    private LeastDeviation() {}

    /** Time: loads. */
    static double amps(Project project) {
        int phases = project.supply().system().phases().size();
        double sum = 0;
        double largest = 0;
        long unit = 0;
        long units = 0;
        boolean whole = true;
        for (Load load : project.loads()) {
            sum += load.poles() * load.runningAmps();
            largest = Math.max(largest, load.runningAmps());
            long each = Math.round(load.runningAmps() * UNITS_AN_AMP);
            whole &= Math.abs(each - load.runningAmps() * UNITS_AN_AMP) < 1e-4;
            unit = gcd(unit, each);
            units += load.poles() * each;
        }
        double amps = phases == 1 ? 0 : largest - sum / phases;
        if (whole && unit > 0) {
            long over = units / unit % phases;
            double parts = over == 0 ? 0 : Math.max(over, phases - over) / (double) phases;
            amps = Math.max(amps, parts * unit / UNITS_AN_AMP);
        }
        return Math.max(0, amps - ROUNDING_AMPS);
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
