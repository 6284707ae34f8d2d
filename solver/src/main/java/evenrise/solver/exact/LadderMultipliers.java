package evenrise.solver.exact;

import evenrise.solver.exact.LadderPanels.Balance;
import java.util.List;

/**
 * What each limit of the ladder counts, and what follows from it by weak duality: whatever the multipliers, none below 0, a
 * bound holds (Geoffrion 1974, Lagrangean relaxation for integer programming, Mathematical Programming Study 2:82–114, from
 * memory). So what a solver says of them has to be neither right nor exact.
 *
 * @param climb by phase and rank
 * @param over by balance and phase, that it carries more than the mean
 * @param under the same, that it carries less
 */
record LadderMultipliers(double[][] climb, double[][] over, double[][] under) {
    /** What sums of doubles lose stays far below this, in ampere-equivalents. */
    private static final double SLACK = 1e-6;

    /**
     * What the peak and the deviations by their weights stay below in no way of a box.
     *
     * @param peakWeight of an ampere of the peak
     * @return infinity where some load can sit nowhere
     */
    double bound(LadderLoads loads, List<Balance> balances, LadderBox box, double peakWeight, double leastPeakAmps) {
        LadderMultipliers kept = within(peakWeight, balances);
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
        double[][] running = kept.perRunningAmp(loads, balances);
        for (int load = 0; load < loads.count(); load++) {
            sum += least(loads, box, load, above, running);
        }
        return sum;
    }

    /** The same, no more of them than the weights allow, and none below 0. */
    private LadderMultipliers within(double peakWeight, List<Balance> balances) {
        double climbing = 0;
        for (double[] phase : climb) {
            for (double each : phase) {
                climbing += Math.max(0, each);
            }
        }
        double climbs = climbing > peakWeight ? peakWeight / climbing : 1;
        double[][] climbsLess = new double[climb.length][];
        for (int phase = 0; phase < climb.length; phase++) {
            climbsLess[phase] = times(climb[phase], climbs);
        }
        double[][] overLess = new double[over.length][];
        double[][] underLess = new double[over.length][];
        for (int i = 0; i < over.length; i++) {
            double deviating = 0;
            for (int phase = 0; phase < over[i].length; phase++) {
                deviating += Math.max(0, over[i][phase]) + Math.max(0, under[i][phase]);
            }
            double weight = balances.get(i).weight();
            double deviates = deviating > weight ? weight / deviating : 1;
            overLess[i] = times(over[i], deviates);
            underLess[i] = times(under[i], deviates);
        }
        return new LadderMultipliers(climbsLess, overLess, underLess);
    }

    private static double[] times(double[] values, double factor) {
        double[] scaled = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            scaled[i] = factor * Math.max(0, values[i]);
        }
        return scaled;
    }

    /** What an ampere in use costs on a phase of a place, beside what it costs spread over all of them. */
    private double[][] perRunningAmp(LadderLoads loads, List<Balance> balances) {
        double[][] cost = new double[loads.places()][loads.phases];
        for (int place = 0; place < cost.length; place++) {
            double mean = 0;
            for (int i = 0; i < over.length; i++) {
                for (int phase = 0; balances.get(i).counts(place) && phase < loads.phases; phase++) {
                    double each = over[i][phase] - under[i][phase];
                    cost[place][phase] += each;
                    mean += each / loads.phases;
                }
            }
            for (int phase = 0; phase < loads.phases; phase++) {
                cost[place][phase] -= mean;
            }
        }
        return cost;
    }

    /** What a load costs where it costs least. */
    private static double least(LadderLoads loads, LadderBox box, int load, double[][] above, double[][] running) {
        double least = Double.POSITIVE_INFINITY;
        for (int mask = 1; mask < 1 << loads.phases; mask++) {
            if (loads.mayTake(load, mask, box)) {
                for (int place = 0; place < running.length; place++) {
                    if (loads.maySitIn[load][place]) {
                        double cost = 0;
                        for (int phase = 0; phase < loads.phases; phase++) {
                            if (LadderLoads.has(mask, phase)) {
                                double found = above[phase][load < loads.climbers ? load : 0];
                                cost += loads.baseAmps[load] * found + loads.runningAmps[load] * running[place][phase];
                            }
                        }
                        least = Math.min(least, cost);
                    }
                }
            }
        }
        return least;
    }
}
