package evenrise.solver.engine.state;

import java.util.Arrays;

/**
 * What a node peaks at when an emergency is released: what drops comes on as in the sequence, onto all that holds. The
 * contacts of all systems are released, or that of one, with what others drop in use.
 */
final class ReleaseInrush {
    private final CompiledProject compiled;
    private final EventLoad events;
    private final boolean hasSeveralSystems;
    private final FromRest all;
    /** By system; only where one clock serves several, else {@link #all} tells them apart. */
    private final FromRest[] bySystem;
    /** By system and phase, what drops, also what stays off then, in use. */
    private final long[][] dropped;

    ReleaseInrush(CompiledProject compiled, InstantIndex[] indexes) {
        this.compiled = compiled;
        events = compiled.eventLoad;
        hasSeveralSystems = compiled.hasSystems && compiled.systemCount > 1;
        all = new FromRest(compiled, indexes);
        bySystem = new FromRest[hasSeveralSystems && !compiled.hasClocks ? compiled.systemCount : 0];
        Arrays.setAll(bySystem, system -> new FromRest(compiled, indexes));
        dropped = new long[compiled.systemCount][compiled.phaseCount];
    }

    void add(int load, int[] shareOf, int instant, int sign) {
        if (!compiled.drops[load]) {
            return;
        }
        int system = compiled.orderOf(load);
        for (int phase = 0; phase < compiled.phaseCount; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                dropped[system][phase] += sign * events.units[shareOf[phase]].use[load];
            }
        }
        if (events.comesBack[load]) {
            all.add(load, shareOf, instant, sign);
            if (bySystem.length > 0) {
                bySystem[system].add(load, shareOf, instant, sign);
            }
        }
    }

    /** @param use what all draw in full use */
    long peakUnits(int phase, long use) {
        long held = use;
        for (long[] each : dropped) {
            held -= each[phase];
        }
        long worst = held + all.peakUnits(phase);
        if (hasSeveralSystems) {
            worst = Math.max(worst, use); // one of which nothing is fed from here
            for (int system = 0; system < dropped.length; system++) {
                long back = compiled.hasClocks ? all.aloneUnits(system, phase) : bySystem[system].peakUnits(phase);
                worst = Math.max(worst, use - dropped[system][phase] + back);
            }
        }
        return worst;
    }
}
