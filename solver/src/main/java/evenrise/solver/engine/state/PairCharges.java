package evenrise.solver.engine.state;

/** Charges for rules between two loads; a pair counts once both have what the rule looks at. */
public final class PairCharges {
    private final PlanSums sums;
    private final CompiledProject compiled;
    private final long[] charges;
    private final IndexSet broken;
    private long total;

    PairCharges(PlanSums sums) {
        this.sums = sums;
        this.compiled = sums.compiled;
        charges = new long[compiled.pairs.kind.length];
        broken = new IndexSet(charges.length);
    }

    /** Looks at every pair of a load again; while it is {@code present} no more, its pairs cost nothing. */
    void refresh(int load, boolean present) {
        for (int pair : compiled.pairs.ofLoad[load]) {
            long charge = present ? charge(pair) : 0;
            if (charge != charges[pair]) {
                total += charge - charges[pair];
                charges[pair] = charge;
                broken.set(pair, charge > 0);
            }
        }
    }

    long charge() {
        return total;
    }

    /** Pairs that are charged anything. */
    public IndexSet broken() {
        return broken;
    }

    /** What one pair is charged. */
    public long chargeOf(int pair) {
        return charges[pair];
    }

    private long charge(int pair) {
        int first = compiled.pairs.first[pair];
        int second = compiled.pairs.second[pair];
        if (compiled.pairs.kind[pair] == Pairs.ORDER) {
            int before = sums.instantOf(first);
            int behind = sums.instantOf(second);
            return before == CompiledProject.NONE || behind == CompiledProject.NONE
                    ? 0
                    : Charges.late(compiled.instants.micros(before)
                            + compiled.settleMicros[first]
                            - compiled.instants.micros(behind));
        }
        Place one = sums.placeOf(first);
        Place other = sums.placeOf(second);
        if (one == null || other == null) {
            return 0;
        }
        boolean broken =
                switch (compiled.pairs.kind[pair]) {
                    case Pairs.APART -> one.panel() == other.panel();
                    case Pairs.WITH -> one.panel() != other.panel();
                    default ->
                        one.phaseMask() != other.phaseMask()
                                || compiled.tree.origin[one.panel()] != compiled.tree.origin[other.panel()];
                };
        return broken ? Charges.PLACE : 0;
    }
}
