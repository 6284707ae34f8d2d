package evenrise.solver.engine.state;

/**
 * How far the loads of a chain of boards, coming on alone as they do after its first board has failed, peak at a node above
 * what they draw in use. Worked out anew, load by load of the chain, where a move has touched it.
 */
final class ChainRise {
    private final CompiledProject compiled;
    private final PlanSums sums;
    private final FromRest alone;

    ChainRise(PlanSums sums, InstantIndex[] indexes) {
        this.sums = sums;
        this.compiled = sums.compiled;
        alone = new FromRest(compiled, indexes);
    }

    /** Writes into {@code units} by how much on each phase; may be less than nothing. */
    void of(int head, int node, long[] units) {
        addAll(head, node, 1);
        for (int phase = 0; phase < units.length; phase++) {
            units[phase] = alone.peakUnits(phase) - alone.usedUnits(phase);
        }
        addAll(head, node, -1);
    }

    private void addAll(int head, int node, int sign) {
        for (int board : compiled.eventLoad.chain[head]) {
            for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
                int lead = sums.loadOnOutput(k);
                if (lead != CompiledProject.NONE) {
                    for (int load : compiled.bundle[lead]) {
                        add(load, node, sign);
                    }
                }
            }
        }
    }

    private void add(int load, int node, int sign) {
        Place place = sums.placeOf(load);
        int instant = sums.instantOf(load);
        int[] shareOf = place == null || instant == CompiledProject.NONE ? null : compiled.tree.sharesAt(place, node);
        if (shareOf != null) {
            alone.add(load, shareOf, instant, sign);
        }
    }
}
