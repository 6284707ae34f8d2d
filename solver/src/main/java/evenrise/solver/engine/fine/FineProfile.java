package evenrise.solver.engine.fine;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.InrushProfile;
import java.util.Arrays;

/**
 * The supply's profile as plain rows, phase by phase: what flows at each instant, and its power where something comes on. A
 * change is tried without being made: only what it touches is raised anew, and nothing has to be taken back where it is
 * dropped. Currents are whole units in floating point, so that sums stay exact.
 */
final class FineProfile {
    /** How much lower a sum of powers may have become before all are summed anew: what was higher has left its rounding. */
    private static final double WORN = 64;

    private final int phases;
    private final int size;
    private final int[] baseUnits;
    private final int[][] excessUnits;
    /** By phase and instant, all of one phase in a row. */
    private final double[] units;

    private final double[] powers;
    /** What a change adds; all zero between changes. */
    private final double[] delta;

    private final double[] raised;
    private final Uses uses;
    /** By phase, the instants that a change touches. */
    private final int[] low;

    private final int[] high;
    private int doublings;
    private double scale;
    private double sum;
    private double nextSum;

    FineProfile(CompiledProject compiled) {
        phases = compiled.phaseCount;
        size = compiled.usefulInstants();
        int loads = compiled.loadCount();
        baseUnits = compiled.envelopes.baseUnits;
        excessUnits = new int[loads][];
        Arrays.setAll(excessUnits, compiled.envelopes::excessUnits);
        units = new double[phases * size];
        powers = new double[phases * size];
        delta = new double[phases * size];
        raised = new double[phases * size];
        uses = new Uses(size);
        low = new int[phases];
        high = new int[phases];
    }

    /** Instants that there are. */
    int size() {
        return size;
    }

    /** Adds ({@code sign} 1) or takes away (−1) a load; one that is not switched draws its base from the first instant. */
    void add(int load, int phaseMask, int instant, int sign) {
        for (int phase = 0; phase < phases; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                addTo(units, phase, load, instant, sign, size);
            }
        }
        if (instant >= 0) {
            uses.add(instant, sign);
        }
    }

    /**
     * Adds a base up to an instant, and an excess.
     *
     * @return the instant behind the last that was touched
     */
    private int addTo(double[] to, int phase, int load, int instant, int sign, int end) {
        int row = phase * size;
        double base = (double) sign * baseUnits[load];
        for (int t = row + Math.max(0, instant); t < row + end; t++) {
            to[t] += base;
        }
        if (instant < 0) {
            return end;
        }
        int[] excess = excessUnits[load];
        int length = Math.min(excess.length, size - instant);
        for (int i = 0; i < length; i++) {
            to[row + instant + i] += sign * excess[i];
        }
        return Math.max(end, instant + length);
    }

    /** From now on measures by a norm of this order. */
    void begin(int orderDoublings) {
        doublings = orderDoublings;
        double peak = 1;
        for (double each : units) {
            peak = Math.max(peak, each);
        }
        scale = 1 / peak;
        raiseAll();
    }

    private void raiseAll() {
        for (int phase = 0; phase < phases; phase++) {
            for (int t = 0; t < size; t++) {
                powers[phase * size + t] = units[phase * size + t] * scale * uses.factor(t);
            }
        }
        InrushProfile.raise(powers, 0, powers.length, doublings);
        sum = 0;
        for (double each : powers) {
            sum += each;
        }
    }

    /** In units, as {@link InrushProfile#norm} has it. */
    double norm() {
        return norm(sum);
    }

    private double norm(double of) {
        return Math.pow(of, 1.0 / (1 << doublings)) / scale;
    }

    /** The highest current on any of some phases. */
    double highest(int phaseMask, int instant) {
        double highest = 0;
        for (int phase = 0; phase < phases; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                highest = Math.max(highest, units[phase * size + instant]);
            }
        }
        return highest;
    }

    /** A load tries other phases, and another instant; {@link #keep} or {@link #drop} must follow. */
    void move(int load, int mask, int instant, int nextMask, int nextInstant) {
        for (int phase = 0; phase < phases; phase++) {
            boolean was = (mask >> phase & 1) != 0;
            boolean is = (nextMask >> phase & 1) != 0;
            if (was == is && (!was || instant == nextInstant)) {
                continue;
            }
            int end = was && is ? Math.max(instant, nextInstant) : size;
            if (was) {
                touch(phase, Math.max(0, instant), addTo(delta, phase, load, instant, -1, end));
            }
            if (is) {
                touch(phase, Math.max(0, nextInstant), addTo(delta, phase, load, nextInstant, 1, end));
            }
        }
        if (instant != nextInstant) {
            uses.plan(instant, -1);
            uses.plan(nextInstant, 1);
        }
    }

    private void touch(int phase, int from, int to) {
        boolean isFirst = low[phase] == high[phase];
        low[phase] = isFirst ? from : Math.min(low[phase], from);
        high[phase] = isFirst ? to : Math.max(high[phase], to);
    }

    /** The norm after all that was tried, in units. */
    double tried() {
        uses.settle();
        for (int i = 0; i < uses.changedCount(); i++) {
            for (int phase = 0; phase < phases; phase++) {
                touch(phase, uses.changed(i), uses.changed(i) + 1);
            }
        }
        nextSum = sum;
        for (int phase = 0; phase < phases; phase++) {
            int row = phase * size;
            int from = row + low[phase];
            int to = row + high[phase];
            for (int i = from; i < to; i++) {
                raised[i] = (units[i] + delta[i]) * scale * uses.factor(i - row);
            }
            InrushProfile.raise(raised, from, to, doublings);
            nextSum += difference(from, to);
        }
        return nextSum > 0 ? norm(nextSum) : Double.POSITIVE_INFINITY;
    }

    /** Two sums side by side, so that the processor need not wait for one addition before it begins the next. */
    private double difference(int from, int to) {
        double first = 0;
        double second = 0;
        int i = from;
        for (; i + 1 < to; i += 2) {
            first += raised[i] - powers[i];
            second += raised[i + 1] - powers[i + 1];
        }
        return i < to ? first + second + raised[i] - powers[i] : first + second;
    }

    /** Whether what was tried stays below a limit wherever it touches an instant in use. */
    boolean staysBelow(double limitUnits) {
        if (limitUnits == Double.POSITIVE_INFINITY) {
            return true;
        }
        for (int phase = 0; phase < phases; phase++) {
            for (int t = low[phase]; t < high[phase]; t++) {
                if ((units[phase * size + t] + delta[phase * size + t]) * uses.factor(t) > limitUnits) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Last instant at which something comes on, what is tried included. */
    int lastUsed() {
        return uses.last();
    }

    void keep() {
        for (int phase = 0; phase < phases; phase++) {
            int from = phase * size + low[phase];
            int to = phase * size + high[phase];
            for (int i = from; i < to; i++) {
                units[i] += delta[i];
                delta[i] = 0;
            }
            System.arraycopy(raised, from, powers, from, to - from);
            low[phase] = 0;
            high[phase] = 0;
        }
        uses.keep();
        boolean isWorn = nextSum < sum / WORN;
        sum = nextSum;
        if (isWorn) {
            raiseAll();
        }
    }

    void drop() {
        for (int phase = 0; phase < phases; phase++) {
            Arrays.fill(delta, phase * size + low[phase], phase * size + high[phase], 0);
            low[phase] = 0;
            high[phase] = 0;
        }
        uses.drop();
    }
}
