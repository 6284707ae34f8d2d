package evenrise.solver.engine.state;

import evenrise.model.project.Overlap;
import java.util.Arrays;

/**
 * Greatest current of one node, phase by phase, kept up to date load by load: of all loads on one clock, or of systems
 * with clocks of their own, each on top of what the others draw in use.
 *
 * <p>P is the peak of a system alone, F what it draws in use, U what is always on. One at a time: U + the greatest, over
 * the system that starts, of max(P, F) of that one and F of the rest. Any: U + Σ max(P, F).
 */
public final class NodeInrush {
    private final CompiledProject compiled;
    private final boolean hasClocks;
    private final boolean anyAtOnce;
    private final InrushProfile[] profiles;
    private final InrushProfile first;
    private final InstantIndex[] indexes;
    /** By system and phase, F. */
    private final long[][] used;

    private final long[] allUsed;
    private final long[] always;
    private double[] terms = new double[64];

    /** @param indexes of each clock's instants */
    NodeInrush(CompiledProject compiled, InstantIndex[] indexes) {
        this.compiled = compiled;
        this.indexes = indexes;
        hasClocks = compiled.hasClocks;
        anyAtOnce = hasClocks && compiled.project.overlap() == Overlap.ANY;
        profiles = new InrushProfile[compiled.clockCount];
        for (int clock = 0; clock < profiles.length; clock++) {
            profiles[clock] = new InrushProfile(compiled, indexes[clock]);
        }
        first = profiles[0];
        used = new long[compiled.clockCount][compiled.phaseCount];
        allUsed = new long[compiled.phaseCount];
        always = new long[compiled.phaseCount];
    }

    /** Adds or takes away a load that sits on these phases of the node; one that is to come on and never does draws nothing. */
    void add(int load, int phaseMask, int instant, int sign) {
        boolean comesOn = instant != CompiledProject.NONE;
        if (!comesOn && compiled.switched[load]) {
            return;
        }
        if (!hasClocks) {
            first.add(load, phaseMask, comesOn ? instant : 0, sign);
            return;
        }
        for (int phase = 0; phase < allUsed.length; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                use(load, phase, sign * compiled.envelopes.useUnits[load]);
            }
        }
        if (comesOn) {
            profiles[compiled.clockOf(load)].add(load, phaseMask, instant, sign);
        }
    }

    /** The same beyond transformers, by the parts that are seen. */
    void addShares(int load, int[] shareOf, int instant, int sign) {
        boolean comesOn = instant != CompiledProject.NONE;
        if (!comesOn && compiled.switched[load]) {
            return;
        }
        if (!hasClocks) {
            first.addShares(load, shareOf, comesOn ? instant : 0, sign);
            return;
        }
        for (int phase = 0; phase < allUsed.length; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                use(load, phase, sign * compiled.shares[shareOf[phase]].useUnits[load]);
            }
        }
        if (comesOn) {
            profiles[compiled.clockOf(load)].addShares(load, shareOf, instant, sign);
        }
    }

    private void use(int load, int phase, int units) {
        if (compiled.switched[load]) {
            used[compiled.systemOf[load]][phase] += units;
            allUsed[phase] += units;
        } else {
            always[phase] += units;
        }
    }

    /** Greatest current on one phase. */
    int peakUnits(int phase) {
        if (!hasClocks) {
            return first.peakUnits(phase);
        }
        long peak = always[phase] + allUsed[phase];
        if (anyAtOnce) {
            for (int clock = 0; clock < profiles.length; clock++) {
                peak += rise(clock, phase);
            }
            return (int) peak;
        }
        return (int) (peak + rise(highest(phase), phase));
    }

    /** The profiles of all clocks, not to be changed. */
    InrushProfile[] profiles() {
        return profiles;
    }

    /** How far the start of a system peaks above its use; 0 where it does not. */
    private long rise(int clock, int phase) {
        return Math.max(0, profiles[clock].peakUnits(phase) - used[clock][phase]);
    }

    /** The system whose start adds most to what is in use; the first of equals. */
    private int highest(int phase) {
        int best = 0;
        for (int clock = 1; clock < profiles.length; clock++) {
            if (profiles[clock].peakUnits(phase) - used[clock][phase]
                    > profiles[best].peakUnits(phase) - used[best][phase]) {
                best = clock;
            }
        }
        return best;
    }

    /** Greatest current on any phase. */
    int peakUnits() {
        return hasClocks ? peakUnits(peakPhase()) : first.peakUnits();
    }

    /** Phase of the peak; the first of equals. */
    public int peakPhase() {
        if (!hasClocks) {
            return first.peakPhase();
        }
        int best = 0;
        for (int phase = 1; phase < allUsed.length; phase++) {
            if (peakUnits(phase) > peakUnits(best)) {
                best = phase;
            }
        }
        return best;
    }

    /** The clock on which the peak is, or adds most to what is in use. */
    public int peakClock() {
        return hasClocks ? highest(peakPhase()) : 0;
    }

    /** First instant of the peak on its phase and clock. */
    public int peakInstant() {
        return hasClocks ? profiles[peakClock()].peakInstant(peakPhase()) : first.peakInstant();
    }

    /** Current of one clock's loads at an instant. */
    public int units(int clock, int phase, int instant) {
        return profiles[clock].units(phase, instant);
    }

    /** The norm in the place of the peak: see {@link InrushProfile#norm}. */
    double norm(int doublings) {
        if (!hasClocks) {
            return first.norm(doublings);
        }
        double peak = peakUnits();
        double scale = 1 / Math.max(1, peak);
        int count = anyAtOnce ? gatherSums(doublings, scale) : gatherStarts(scale);
        InrushProfile.raise(terms, 0, count, doublings);
        double sum = InrushProfile.sum(terms, count);
        return sum == 0 ? peak : Math.max(peak, Math.pow(sum, 1.0 / (1 << doublings)) / scale);
    }

    /** What flows at each instant of each start, all else being in use. */
    private int gatherStarts(double scale) {
        int next = 0;
        for (int phase = 0; phase < allUsed.length; phase++) {
            long inUse = always[phase] + allUsed[phase];
            room(next + 1);
            terms[next++] = inUse * scale;
            for (int clock = 0; clock < profiles.length; clock++) {
                room(next + profiles[clock].usedCount());
                next = profiles[clock].gather(phase, inUse - used[clock][phase], scale, terms, next);
            }
        }
        return next;
    }

    /** By phase, the sum of each system's norm or use. */
    private int gatherSums(int doublings, double scale) {
        double[] sums = new double[allUsed.length];
        for (int phase = 0; phase < sums.length; phase++) {
            sums[phase] = always[phase];
            for (int clock = 0; clock < profiles.length; clock++) {
                room(profiles[clock].usedCount());
                double own = Math.max(1, profiles[clock].peakUnits(phase));
                int count = profiles[clock].gather(phase, 0, 1 / own, terms, 0);
                InrushProfile.raise(terms, 0, count, doublings);
                double norm = own * Math.pow(InrushProfile.sum(terms, count), 1.0 / (1 << doublings));
                sums[phase] += Math.max(norm, used[clock][phase]);
            }
        }
        room(sums.length);
        for (int phase = 0; phase < sums.length; phase++) {
            terms[phase] = sums[phase] * scale;
        }
        return sums.length;
    }

    private void room(int wanted) {
        if (terms.length < wanted) {
            terms = Arrays.copyOf(terms, 2 * wanted);
        }
    }

    /** Sum of the fourth powers of all currents: the lower, the flatter the profiles, also far from the peak. */
    public double unevenness() {
        double sum = 0;
        for (InrushProfile profile : profiles) {
            sum += profile.unevenness();
        }
        return sum;
    }

    /** Which loads of a clock come on at each instant. */
    public InstantIndex index(int clock) {
        return indexes[clock];
    }
}
