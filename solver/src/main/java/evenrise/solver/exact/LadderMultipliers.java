package evenrise.solver.exact;

/**
 * What each limit of the ladder counts, and what follows from it by weak duality: whatever the multipliers, none below 0, a
 * bound holds (Geoffrion 1974, Lagrangean relaxation for integer programming, Mathematical Programming Study 2:82–114, from
 * memory). So what a solver says of them has to be neither right nor exact.
 *
 * @param climb by phase and rank
 * @param over by phase, that it carries more than the mean
 * @param under the same, that it carries less
 */
record LadderMultipliers(double[][] climb, double[] over, double[] under) {
    /** What sums of doubles lose stays far below this, in ampere-equivalents. */
    private static final double SLACK = 1e-6;

    /**
     * What the peak and the deviation by their weights stay below in no way of a box.
     *
     * @param peakWeight of an ampere of the peak
     * @param deviationWeight of an ampere of the supply's deviation
     * @return infinity where some load can sit nowhere
     */
    double bound(LadderLoads loads, LadderBox box, double peakWeight, double deviationWeight, double leastPeakAmps) {
        LadderMultipliers kept = within(peakWeight, deviationWeight);
        double[][] above = new double[loads.phases][loads.climbers + 1];
        double sum = -SLACK;
        double used = 0;
        for (int phase = 0; phase < loads.phases; phase++) {
            for (int rank = loads.climbers - 1; rank >= 0; rank--) {
                double counts = kept.climb[phase][rank];
                above[phase][rank] = above[phase][rank + 1] + counts;
                sum += counts * (rank >= box.to(phase) ? loads.excessAmps[rank] : 0);
                used += counts;
            }
        }
        sum += Math.max(0, peakWeight - used) * leastPeakAmps;
        for (int load = 0; load < loads.count(); load++) {
            sum += kept.least(loads, box, load, above);
        }
        return sum;
    }

    /** The same, no more of them than the weights allow, and none below 0. */
    private LadderMultipliers within(double peakWeight, double deviationWeight) {
        double climbing = 0;
        double deviating = 0;
        for (int phase = 0; phase < climb.length; phase++) {
            for (double each : climb[phase]) {
                climbing += Math.max(0, each);
            }
            deviating += Math.max(0, over[phase]) + Math.max(0, under[phase]);
        }
        double climbs = climbing > peakWeight ? peakWeight / climbing : 1;
        double deviates = deviating > deviationWeight ? deviationWeight / deviating : 1;
        double[][] scaled = new double[climb.length][];
        for (int phase = 0; phase < climb.length; phase++) {
            scaled[phase] = times(climb[phase], climbs);
        }
        return new LadderMultipliers(scaled, times(over, deviates), times(under, deviates));
    }

    private static double[] times(double[] values, double factor) {
        double[] scaled = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            scaled[i] = factor * Math.max(0, values[i]);
        }
        return scaled;
    }

    /** What a load costs where it costs least. */
    private double least(LadderLoads loads, LadderBox box, int load, double[][] above) {
        double mean = 0;
        for (int phase = 0; phase < loads.phases; phase++) {
            mean += (over[phase] - under[phase]) / loads.phases;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int mask = 1; mask < 1 << loads.phases; mask++) {
            if (loads.mayTake(load, mask, box)) {
                double cost = -loads.poles[load] * loads.runningAmps[load] * mean;
                for (int phase = 0; phase < loads.phases; phase++) {
                    if (LadderLoads.has(mask, phase)) {
                        double found = above[phase][load < loads.climbers ? load : 0];
                        cost += loads.baseAmps[load] * found + loads.runningAmps[load] * (over[phase] - under[phase]);
                    }
                }
                least = Math.min(least, cost);
            }
        }
        return least;
    }
}
