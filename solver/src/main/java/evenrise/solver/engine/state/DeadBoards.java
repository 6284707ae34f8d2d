package evenrise.solver.engine.state;

import evenrise.model.project.Overlap;

/**
 * What a node peaks at when the worst single board fails: dead through a brownout, or working again while all else is on.
 *
 * <p>A change costs what it touches and, in addition, a look at the loads of each chain that it touches and one at each
 * board that switches anything here.
 */
final class DeadBoards {
    private final CompiledProject compiled;
    private final EventLoad events;
    private final int node;
    private final InstantIndex[] indexes;
    private final ChainRise chainRise;
    /** By clock: of all switched loads without what stays; only where loads wait for a dead board. */
    private final InrushProfile[] excess;

    private final int[] loadsOf;
    /** Boards that switch anything here. */
    private final IndexSet here;

    private final long[][] returning;
    private final long[][] later;
    /** By head of a chain: how far the chain's own peak here is above what it draws in use; may be less. */
    private final long[][] rise;
    /** Heads whose chains peak above what they draw in use. */
    private final IndexSet rising;

    private final IntBag stale;

    DeadBoards(PlanSums sums, int node, InstantIndex[] indexes) {
        this.node = node;
        this.indexes = indexes;
        compiled = sums.compiled;
        events = compiled.eventLoad;
        chainRise = sums.chainRise();
        excess = new InrushProfile[events.othersWait ? compiled.clockCount : 0];
        int count = compiled.boardCount;
        loadsOf = new int[count];
        here = new IndexSet(count);
        returning = new long[count][compiled.phaseCount];
        later = new long[count][compiled.phaseCount];
        rise = new long[count][compiled.phaseCount];
        rising = new IndexSet(count);
        stale = new IntBag(count);
    }

    void add(int load, int[] shareOf, int board, int instant, int sign) {
        for (int phase = 0; phase < compiled.phaseCount; phase++) {
            if (shareOf[phase] != FeederTree.NO_SHARE) {
                EventUnits seen = events.units[shareOf[phase]];
                returning[board][phase] += sign * seen.returning[load];
                later[board][phase] += sign * (seen.use[load] + seen.later[load]);
            }
        }
        loadsOf[board] += sign;
        here.set(board, loadsOf[board] > 0);
        for (int head : events.heads[board]) {
            stale.add(head);
        }
        if (events.othersWait) {
            int clock = compiled.clockOf(load);
            if (excess[clock] == null) {
                excess[clock] = new InrushProfile(compiled, indexes[clock]);
            }
            excess[clock].addExcess(load, shareOf, instant, sign);
        }
    }

    /**
     * @param use what all draw in full use
     * @param atOnce what they draw as soon as the mains return
     * @param afterwards what they draw in the sequence that follows
     */
    long peakUnits(int phase, long use, long atOnce, long afterwards) {
        refresh();
        long worst = Math.max(use + waitedUnits(phase), Math.max(atOnce, afterwards));
        for (int i = 0; events.deadStayClosed && i < here.size(); i++) {
            int board = here.get(i);
            worst = Math.max(worst, atOnce + returning[board][phase]);
            worst = Math.max(worst, afterwards + later[board][phase]);
        }
        for (int i = 0; i < rising.size(); i++) {
            worst = Math.max(worst, use + rise[rising.get(i)][phase]);
        }
        return worst;
    }

    /** The greatest excess of what may have waited; of several clocks as the overlap lets them start. */
    private long waitedUnits(int phase) {
        long most = 0;
        for (InrushProfile each : excess) {
            long own = each == null ? 0 : each.peakUnits(phase);
            most = compiled.project.overlap() == Overlap.ANY ? most + own : Math.max(most, own);
        }
        return most;
    }

    private void refresh() {
        for (int i = 0; i < stale.size(); i++) {
            int head = stale.get(i);
            chainRise.of(head, node, rise[head]);
            boolean rises = false;
            for (long each : rise[head]) {
                rises |= each > 0;
            }
            rising.set(head, rises);
        }
        stale.clear();
    }
}
