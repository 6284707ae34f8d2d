package evenrise.solver.engine.state;

import evenrise.model.project.PlanEvent;
import java.util.Arrays;

/**
 * What one node peaks at when something happens, kept up to date load by load: only at nodes with an inrush limit, and
 * only where the project asks that it holds for an event. docs/events.md has the figures, beginning with the return.
 */
final class EventInrush {
    private final CompiledProject compiled;
    private final EventLoad events;
    private final PlanSums sums;
    private final int root;
    private final int phaseCount;
    private final NodeInrush inrush;
    /** All switched loads, as their systems start; only where these have clocks of their own. */
    private final FromRest normal;

    private final DeadBoards boards;
    private final ReleaseInrush release;
    /** By source: those whose boards are fed from it, and not from where the loads are; only where it may be another. */
    private final FromRest[] fedElsewhere;

    private final long[] use;
    private final long[] anew;
    /** Of what is not switched. */
    private final long[] alwaysUse;
    /** What draws its inrush as soon as the mains return. */
    private final long[] atOnce;
    /** How much more the node carries when the sequence follows that return than it does in the sequence. */
    private final long[] later;

    EventInrush(PlanSums sums, int node, NodeInrush inrush, InstantIndex[] indexes) {
        this.sums = sums;
        this.inrush = inrush;
        compiled = sums.compiled;
        events = compiled.eventLoad;
        root = compiled.tree.root[node];
        phaseCount = compiled.phaseCount;
        normal = compiled.hasClocks ? new FromRest(compiled, inrush) : null;
        boards = events.asked.contains(PlanEvent.BOARD_FAILURE) ? new DeadBoards(sums, node, indexes) : null;
        release = events.asked.contains(PlanEvent.RELEASE) ? new ReleaseInrush(compiled, indexes) : null;
        fedElsewhere = new FromRest[events.sourcesFailApart ? compiled.tree.nodeCount : 0];
        for (int source : compiled.tree.sources) {
            if (events.sourcesFailApart && source != root) {
                fedElsewhere[source] = new FromRest(compiled, indexes);
            }
        }
        use = new long[phaseCount];
        anew = Arrays.copyOf(events.energising[node], phaseCount);
        alwaysUse = new long[phaseCount];
        atOnce = Arrays.copyOf(events.energising[node], phaseCount);
        later = Arrays.copyOf(events.energisingLater[node], phaseCount);
    }

    /**
     * Adds or takes away a load that sits here or behind transformers below.
     *
     * @param shareOf what is seen of it, by phase
     * @param instant at which it comes on, or {@link CompiledProject#NONE}
     */
    void add(int load, int[] shareOf, int instant, int sign) {
        boolean isSwitched = compiled.switched[load];
        if (isSwitched && instant == CompiledProject.NONE) {
            return; // it never comes on
        }
        int board = isSwitched ? sums.outputOf(compiled.leadOf[load]).board() : CompiledProject.NONE;
        int boardRoot = isSwitched && events.sourcesFailApart ? events.feeds.root(board, sums) : root;
        boolean staysConnected = boardRoot != root;
        for (int phase = 0; phase < phaseCount; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                EventUnits seen = events.units[shareOf[phase]];
                use[phase] += sign * seen.use[load];
                anew[phase] += sign * seen.anew[load];
                if (!isSwitched) {
                    long base = compiled.hasClocks
                            ? seen.use[load] // which the start of a system is on top of already
                            : compiled.shares[shareOf[phase]].baseUnits[load];
                    alwaysUse[phase] += sign * seen.use[load];
                    atOnce[phase] += sign * seen.returning[load];
                    later[phase] += sign * (seen.use[load] - base + seen.later[load]);
                } else if (staysConnected) {
                    atOnce[phase] += sign * seen.returning[load];
                    later[phase] += sign * (seen.use[load] + seen.later[load]);
                }
            }
        }
        if (isSwitched) {
            addSwitched(load, shareOf, board, boardRoot, instant, sign);
        }
    }

    private void addSwitched(int load, int[] shareOf, int board, int boardRoot, int instant, int sign) {
        if (normal != null) {
            normal.add(load, shareOf, instant, sign);
        }
        if (boardRoot != root) {
            fedElsewhere[boardRoot].add(load, shareOf, instant, sign);
        }
        if (boards != null) {
            boards.add(load, shareOf, board, instant, sign);
        }
        if (release != null) {
            release.add(load, shareOf, instant, sign);
        }
    }

    /** Charge for peaks over {@code limitAmps}, each event by its worst phase. */
    long charge(double limitAmps) {
        long charge = 0;
        for (PlanEvent event : events.asked) {
            double excessAmps = worstUnits(event) / compiled.envelopes.unitsPerAmp - limitAmps;
            charge += Charges.overMilliAmps(excessAmps * Currents.NANO);
        }
        return charge;
    }

    private long worstUnits(PlanEvent event) {
        long worst = 0;
        for (int phase = 0; phase < phaseCount; phase++) {
            worst = Math.max(
                    worst,
                    switch (event) {
                        case RETURN -> returnUnits(phase);
                        case RELEASE -> release.peakUnits(phase, use[phase]);
                        case BOARD_FAILURE -> boards.peakUnits(phase, use[phase], atOnce[phase], laterUnits(phase));
                        case DIP -> anew[phase];
                    });
        }
        return worst;
    }

    /** The sequence after the mains have returned. */
    private long laterUnits(int phase) {
        return later[phase] + (normal == null ? inrush.peakUnits(phase) : alwaysUse[phase] + normal.peakUnits(phase));
    }

    private long returnUnits(int phase) {
        long worst = Math.max(atOnce[phase], laterUnits(phase));
        if (compiled.tree.sources.length == 1) {
            return worst;
        }
        worst = Math.max(worst, use[phase]); // another source returns, and nothing changes here
        for (int source : compiled.tree.sources) {
            FromRest back = fedElsewhere[source];
            if (back != null) { // or with it boards that switch loads here
                worst = Math.max(worst, use[phase] - back.usedUnits(phase) + back.peakUnits(phase));
            }
        }
        return worst;
    }
}
