package evenrise.solver.bounds;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.DoubleUnaryOperator;

/**
 * A peak is refuted if loads that must come on within some instants do not fit there, phase by phase and instant by instant,
 * under that peak: a bin-packing argument with time for its bins. The largest refuted peak is a bound. Windows are narrowed
 * first by what each load comes after and what comes after it: those need room as well (head and tail, as in Scholl and
 * Becker 2006, European Journal of Operational Research 168:666–693; from memory).
 */
final class PackedPeak {
    private static final int MOST_LOADS = 400;
    private static final int[] LAGS = {0, 1, 2, 4, 8, 16};
    private static final int HALVINGS = 14;
    private static final int STEPS = 60;
    private static final double SLACK = 1e-9;

    private final BoundedProject subject;
    private final int count;

    /** Whether what comes after another load never comes at an earlier instant: times are forgiven less than a step. */
    private final boolean isStrict;

    private final BitSet[] ancestors;
    private final int[] settleSteps;
    private final double[][] drawn;
    private final double unitAmps;

    PackedPeak(BoundedProject subject) {
        this.subject = subject;
        this.count = subject.loads.size() <= MOST_LOADS ? subject.loads.size() : 0;
        this.ancestors = new BitSet[count];
        this.settleSteps = new int[count];
        this.drawn = new double[count][LAGS[LAGS.length - 1] + 1];
        TimeGrid grid = subject.grid;
        this.isStrict = grid.exact() && grid.stepSeconds() > BoundedProject.FORGIVEN_SECONDS;
        int slack = grid.exact() ? 0 : 1;
        for (int i = 0; i < count; i++) {
            SwitchedLoad load = subject.loads.get(i);
            ancestors[i] = new BitSet(count);
            for (int before : load.before()) {
                ancestors[i].set(before);
                ancestors[i].or(ancestors[before]);
            }
            double settle = load.settleSeconds() - BoundedProject.FORGIVEN_SECONDS;
            settleSteps[i] = isStrict ? Math.max(0, grid.first(settle)) : 0;
            for (int lag = 0; lag < drawn[i].length; lag++) {
                double decaying = Math.max(0, (lag + slack) * grid.stepSeconds() - 2 * subject.toleranceSeconds);
                double left = Math.pow(2, -decaying / subject.halfLifeSeconds[load.halfLife()]);
                drawn[i][lag] = load.baseAmps() + load.excessAmps() * left;
            }
        }
        this.unitAmps = WholeUnits.amps(subject);
    }

    /** The largest peak from {@code known} up that is refuted, or known itself. */
    double amps(double known, Windows windows) {
        if (count == 0) {
            return known;
        }
        double refuted = known;
        double open = known * 2 + 1;
        if (unitAmps > 0) {
            open = Math.max(open, unitAmps);
        }
        if (refuted(open, windows)) {
            return open;
        }
        for (int i = 0; i < HALVINGS; i++) {
            // Close to what is known first: that is where it mostly ends.
            double middle = i == 0 ? known * 1.0005 : refuted + (open - refuted) / (i < 5 ? 4 : 2);
            if (refuted(middle, windows)) {
                refuted = middle;
            } else if (i == 0) {
                break;
            } else {
                open = middle;
            }
        }
        return unitAmps > 0 ? inUnits(refuted, windows) : refuted;
    }

    /** Peaks come in whole units: the first that is not refuted. */
    private double inUnits(double refuted, Windows windows) {
        double peak = Math.ceil(refuted / unitAmps - 1e-6) * unitAmps;
        for (int i = 0; i < STEPS && refuted(peak, windows); i++) {
            peak += unitAmps;
        }
        return peak;
    }

    private boolean refuted(double peakAmps, Windows windows) {
        double capacity = peakAmps * (1 + SLACK) + SLACK;
        int[] first = windows.first.clone();
        int[] last = windows.last.clone();
        if (isStrict) {
            narrow(first, last, capacity * subject.phases);
        }
        for (int i = 0; i < count; i++) {
            if (first[i] > last[i] || drawn[i][0] > capacity) {
                return true;
            }
        }
        double[] sizes = new double[count];
        Arrays.setAll(sizes, i -> drawn[i][0]);
        int[] starts = Arrays.stream(first).distinct().sorted().toArray();
        int[] ends = Arrays.stream(last).distinct().sorted().toArray();
        for (DoubleUnaryOperator function : DualFeasible.functions(capacity, sizes)) {
            if (overfull(function, capacity, first, last, starts, ends)) {
                return true;
            }
        }
        return false;
    }

    private boolean overfull(
            DoubleUnaryOperator function, double capacity, int[] first, int[] last, int[] starts, int[] ends) {
        double room = capacity * subject.phases * (1 + SLACK);
        double[] drawnUpTo = new double[count];
        int lag = 0;
        for (int reach : LAGS) {
            double added = 0;
            for (; lag <= reach; lag++) {
                for (int i = 0; i < count; i++) {
                    double image = subject.loads.get(i).poles() * function.applyAsDouble(drawn[i][lag]);
                    drawnUpTo[i] += image;
                    added += image;
                }
            }
            if (added == 0) {
                return false;
            }
            for (int start : starts) {
                double[] endingAt = new double[subject.grid.count()];
                for (int i = 0; i < count; i++) {
                    if (first[i] >= start) {
                        endingAt[last[i]] += drawnUpTo[i];
                    }
                }
                double sum = 0;
                int counted = -1;
                for (int end : ends) {
                    for (; counted < end; counted++) {
                        sum += endingAt[counted + 1];
                    }
                    if (end >= start && sum > (end - start + 1 + reach) * room) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** Heads and tails: what must be on from some instant until a load is on has room for itself in that time. */
    private void narrow(int[] first, int[] last, double roomAmps) {
        for (int i = 0; i < count; i++) {
            for (int before : subject.loads.get(i).before()) {
                first[i] = Math.max(first[i], first[before] + settleSteps[before]);
            }
            Integer[] earlier = ancestors[i].stream().boxed().toArray(Integer[]::new);
            Arrays.sort(earlier, (a, b) -> first[b] - first[a]);
            double sum = whole(i);
            for (int each : earlier) {
                sum += whole(each);
                first[i] = Math.max(first[i], first[each] + steps(sum, roomAmps));
            }
            first[i] = Math.max(first[i], steps(whole(i), roomAmps));
        }
        BitSet[] descendants = new BitSet[count];
        for (int i = count - 1; i >= 0; i--) {
            descendants[i] = new BitSet(count);
        }
        for (int i = 0; i < count; i++) {
            for (int each = ancestors[i].nextSetBit(0); each >= 0; each = ancestors[i].nextSetBit(each + 1)) {
                descendants[each].set(i);
            }
        }
        for (int i = count - 1; i >= 0; i--) {
            Integer[] later = descendants[i].stream().boxed().toArray(Integer[]::new);
            Arrays.sort(later, (a, b) -> last[a] - last[b]);
            double sum = whole(i);
            for (int each : later) {
                sum += whole(each);
                last[i] = Math.min(last[i], last[each] - steps(sum, roomAmps));
            }
            for (int before : subject.loads.get(i).before()) {
                last[before] = Math.min(last[before], last[i] - settleSteps[before]);
            }
        }
    }

    private double whole(int i) {
        return subject.loads.get(i).poles() * drawn[i][0];
    }

    /** Steps from the first to the last instant of as many as have the room. */
    private static int steps(double amps, double roomAmps) {
        return (int) Math.min(1_000_000, Math.max(0, Math.ceil(amps / roomAmps - 1e-9) - 1));
    }
}
