package evenrise.solver.engine.state;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Current of one node over the instants of one clock, phase by phase, kept up to date load by load. */
public final class InrushProfile {
    /** By doublings: the part of the peak whose power is below 2⁻⁶⁰ of the peak's, which no sum of thousands shows. */
    private static final double[] NEGLIGIBLE = IntStream.range(0, Integer.SIZE - 1)
            .mapToDouble(doublings -> Math.pow(2, -60.0 / (1 << doublings)))
            .toArray();

    private final InstantIndex index;
    private final EnvelopeRows whole;
    private final EnvelopeRows[] shares;
    private final PhaseProfile[] phases;
    private final double[] terms;
    private int peakUnits;
    private int peakPhase;
    private boolean stale = true;

    InrushProfile(CompiledProject compiled, InstantIndex index) {
        this.index = index;
        whole = compiled.envelopes;
        shares = compiled.shares;
        phases = new PhaseProfile[compiled.phaseCount];
        Arrays.setAll(phases, phase -> new PhaseProfile(compiled));
        terms = new double[compiled.phaseCount * index.mostUsed()];
    }

    /** Adds or takes away a load that comes on at instant {@code from}; an unswitched load draws its base from the first. */
    void add(int load, int phaseMask, int from, int sign) {
        stale = true;
        for (int phase = 0; phase < phases.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                phases[phase].add(whole, load, from, sign);
            }
        }
    }

    /** The same with the parts of a load that are seen beyond a transformer, {@link FeederTree#NO_SHARE} where none is. */
    void addShares(int load, int[] shareOf, int from, int sign) {
        stale = true;
        for (int phase = 0; phase < phases.length; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                phases[phase].add(shares[shareOf[phase]], load, from, sign);
            }
        }
    }

    /** The same of its inrush alone, without what stays. */
    void addExcess(int load, int[] shareOf, int from, int sign) {
        stale = true;
        for (int phase = 0; phase < phases.length; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                phases[phase].addExcess(shares[shareOf[phase]], load, from, sign);
            }
        }
    }

    /** Greatest current on one phase. */
    int peakUnits(int phase) {
        refresh();
        return phases[phase].peakUnits();
    }

    /** Greatest current on any phase. */
    int peakUnits() {
        refresh();
        return peakUnits;
    }

    private void refresh() {
        if (stale) {
            stale = false;
            peakUnits = -1;
            for (int phase = 0; phase < phases.length; phase++) {
                phases[phase].refresh();
                if (phases[phase].peakUnits() > peakUnits) {
                    peakUnits = phases[phase].peakUnits();
                    peakPhase = phase;
                }
            }
        }
    }

    /** Phase of the peak; the first of equals. */
    public int peakPhase() {
        refresh();
        return peakPhase;
    }

    /** First instant of the peak on its phase. */
    public int peakInstant() {
        return peakInstant(peakPhase());
    }

    /** First instant of one phase's peak. */
    int peakInstant(int phase) {
        refresh();
        return phases[phase].peakInstant(index);
    }

    public int units(int phase, int instant) {
        refresh();
        return phases[phase].units(instant);
    }

    /**
     * The profile's norm, in units: never below the peak, and little above it. Unlike the peak it falls with every high
     * instant that is lowered.
     *
     * @param doublings binary logarithm of its order
     */
    double norm(int doublings) {
        double scale = 1.0 / Math.max(1, peakUnits());
        int count = gather(scale, (int) (peakUnits * NEGLIGIBLE[doublings]));
        raise(terms, 0, count, doublings);
        double sum = sum(terms, count);
        return sum == 0 ? peakUnits : Math.max(peakUnits, Math.pow(sum, 1.0 / (1 << doublings)) / scale);
    }

    /** Adds to {@code terms} what one phase draws at the instants in use, each on top of {@code offset}, scaled. */
    int gather(int phase, double offset, double scale, double[] terms, int next) {
        refresh();
        for (int i = 0; i < index.usedCount(); i++) {
            terms[next++] = (offset + phases[phase].units(index.used(i))) * scale;
        }
        return next;
    }

    /** Instants in use. */
    int usedCount() {
        return index.usedCount();
    }

    /**
     * Writes what is drawn at the instants in use side by side, so that the processor can raise many at a time; leaves out
     * what would add nothing.
     */
    private int gather(double scale, int negligibleUnits) {
        int used = index.usedCount();
        int next = 0;
        for (PhaseProfile phase : phases) {
            for (int i = 0; i < used; i++) {
                int units = phase.units(index.used(i));
                terms[next] = units * scale;
                next += units > negligibleUnits ? 1 : 0;
            }
        }
        return next;
    }

    /** Squares terms from one to before another so many times. */
    public static void raise(double[] terms, int from, int to, int doublings) {
        for (int d = 1; d < doublings; d += 2) {
            for (int i = from; i < to; i++) {
                double square = terms[i] * terms[i];
                terms[i] = square * square;
            }
        }
        if ((doublings & 1) == 1) {
            for (int i = from; i < to; i++) {
                terms[i] *= terms[i];
            }
        }
    }

    /** Four sums side by side, so that the processor need not wait for one addition before it begins the next. */
    static double sum(double[] terms, int count) {
        double first = 0;
        double second = 0;
        double third = 0;
        double fourth = 0;
        int i = 0;
        for (; i + 3 < count; i += 4) {
            first += terms[i];
            second += terms[i + 1];
            third += terms[i + 2];
            fourth += terms[i + 3];
        }
        for (; i < count; i++) {
            first += terms[i];
        }
        return first + second + (third + fourth);
    }

    /** Sum of the fourth powers of all currents: the lower, the flatter the profile, also far from its peak. */
    public double unevenness() {
        refresh();
        double sum = 0;
        for (PhaseProfile phase : phases) {
            for (int i = 0; i < index.usedCount(); i++) {
                double units = phase.units(index.used(i));
                sum += units * units * (units * units);
            }
        }
        return sum;
    }
}
