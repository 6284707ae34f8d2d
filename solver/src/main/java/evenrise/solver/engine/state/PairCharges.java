package evenrise.solver.engine.state;

/** Charges for rules between two loads; a pair counts once both have what the rule looks at. */
public final class PairCharges {
    private final Situation situation;
    private final Plant plant;
    private final long[] charges;
    private final IndexSet broken;
    private long total;

    PairCharges(Situation situation) {
        this.situation = situation;
        this.plant = situation.plant;
        charges = new long[plant.pairs.kind.length];
        broken = new IndexSet(charges.length);
    }

    /** Looks at every pair of a load again; while it is {@code present} no more, its pairs cost nothing. */
    void refresh(int load, boolean present) {
        for (int pair : plant.pairs.ofLoad[load]) {
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
        int first = plant.pairs.first[pair];
        int second = plant.pairs.second[pair];
        if (plant.pairs.kind[pair] == Pairs.ORDER) {
            int before = situation.instantOf(first);
            int behind = situation.instantOf(second);
            return before == Plant.NONE || behind == Plant.NONE
                    ? 0
                    : Charges.late(
                            plant.instants.micros(before) + plant.settleMicros[first] - plant.instants.micros(behind));
        }
        Place one = situation.placeOf(first);
        Place other = situation.placeOf(second);
        if (one == null || other == null) {
            return 0;
        }
        boolean broken = plant.pairs.kind[pair] == Pairs.APART
                ? one.panel() == other.panel()
                : one.phaseMask() != other.phaseMask();
        return broken ? Charges.PLACE : 0;
    }
}
