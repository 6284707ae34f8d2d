package evenrise.solver.engine.state;

import evenrise.model.project.Overlap;

/**
 * What some switched loads of a node peak at as they come on from rest, phase by phase, kept up to date load by load: all
 * on one clock, or by systems with clocks of their own, each beside what the others draw in full use, whatever the scenes.
 * Where one starts at a time, what is left of the excess of those before comes on top.
 */
final class FromRest {
    private final CompiledProject compiled;
    private final EventUnits[] units;
    private final InstantIndex[] indexes;
    private final InrushProfile[] profiles;
    private final boolean ownsProfiles;
    private final long[][] used;
    private final long[][] another;

    /** @param indexes of each clock's instants */
    FromRest(CompiledProject compiled, InstantIndex[] indexes) {
        this(compiled, indexes, new InrushProfile[compiled.clockCount], true);
    }

    /** Of all switched loads of a node: those that it counts already. */
    FromRest(CompiledProject compiled, NodeInrush all) {
        this(compiled, new InstantIndex[0], all.profiles(), false);
    }

    private FromRest(CompiledProject compiled, InstantIndex[] indexes, InrushProfile[] profiles, boolean ownsProfiles) {
        this.compiled = compiled;
        this.units = compiled.eventLoad.units;
        this.indexes = indexes;
        this.profiles = profiles;
        this.ownsProfiles = ownsProfiles;
        used = new long[compiled.clockCount][compiled.phaseCount];
        another = new long[compiled.clockCount][compiled.phaseCount];
    }

    /** Adds or takes away a load that comes on at an instant. */
    void add(int load, int[] shareOf, int instant, int sign) {
        int clock = compiled.clockOf(load);
        boolean leavesExcess = compiled.hasClocks && compiled.project.overlap() == Overlap.ONE_AT_A_TIME;
        for (int phase = 0; phase < compiled.phaseCount; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                EventUnits seen = units[shareOf[phase]];
                used[clock][phase] += sign * seen.use[load];
                another[clock][phase] += leavesExcess ? sign * seen.another[load] : 0;
            }
        }
        if (ownsProfiles) {
            if (profiles[clock] == null) {
                profiles[clock] = new InrushProfile(compiled, indexes[clock]);
            }
            profiles[clock].addShares(load, shareOf, instant, sign);
        }
    }

    /** What all of them draw in full use. */
    long usedUnits(int phase) {
        long sum = 0;
        for (long[] each : used) {
            sum += each[phase];
        }
        return sum;
    }

    /** Greatest current on a phase. */
    long peakUnits(int phase) {
        if (!compiled.hasClocks) {
            return startUnits(0, phase);
        }
        boolean anyAtOnce = compiled.project.overlap() == Overlap.ANY;
        long sum = 0;
        long rise = 0;
        for (int clock = 0; clock < used.length; clock++) {
            long own = Math.max(0, startUnits(clock, phase) - used[clock][phase]);
            rise = anyAtOnce ? rise + own : Math.max(rise, own);
            sum += used[clock][phase] + another[clock][phase];
        }
        return sum + rise;
    }

    /** The same of the loads of one clock, were there no others. */
    long aloneUnits(int clock, int phase) {
        return Math.max(startUnits(clock, phase), used[clock][phase]) + another[clock][phase];
    }

    private long startUnits(int clock, int phase) {
        return profiles[clock] == null ? 0 : profiles[clock].peakUnits(phase);
    }
}
