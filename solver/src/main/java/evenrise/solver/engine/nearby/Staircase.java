package evenrise.solver.engine.nearby;

import evenrise.solver.engine.state.PlanSnapshot;
import java.util.Map;
import java.util.TreeMap;

/** The best plan for each price, of those that no plan of a lower price equals. */
final class Staircase {
    /** A broken rule, however little, weighs more than any objective. */
    private static final long RULES_FIRST = 1_000_000_000_000L;

    private final TreeMap<Integer, Kept> kept = new TreeMap<>();

    record Kept(PlanSnapshot plan, int moves, long hardCharge, long objectiveMilliAmps) {
        long value() {
            return Staircase.value(hardCharge, objectiveMilliAmps);
        }
    }

    private static long value(long hardCharge, long objectiveMilliAmps) {
        long charge = Math.min(hardCharge, Long.MAX_VALUE / RULES_FIRST / 2);
        return charge * RULES_FIRST + objectiveMilliAmps;
    }

    /** Whether a plan is better than all of at most its price. */
    boolean wants(int price, long hardCharge, long objectiveMilliAmps) {
        Map.Entry<Integer, Kept> cheaper = kept.floorEntry(price);
        return cheaper == null
                || value(hardCharge, objectiveMilliAmps) < cheaper.getValue().value();
    }

    /** Keeps a plan that is wanted, and lets go what it makes needless. */
    void keep(int price, Kept plan) {
        Map.Entry<Integer, Kept> dearer = kept.higherEntry(price);
        while (dearer != null && dearer.getValue().value() >= plan.value()) {
            kept.remove(dearer.getKey());
            dearer = kept.higherEntry(price);
        }
        kept.put(price, plan);
    }

    void offerAll(Staircase other) {
        other.kept.forEach((price, each) -> {
            if (wants(price, each.hardCharge, each.objectiveMilliAmps)) {
                keep(price, each);
            }
        });
    }

    /** The plan to choose where the price counts so much. */
    PlanSnapshot best(double perPriceAmps) {
        PlanSnapshot best = null;
        long leastCharge = Long.MAX_VALUE;
        double least = Double.POSITIVE_INFINITY;
        for (Map.Entry<Integer, Kept> each : kept.entrySet()) {
            long charge = each.getValue().hardCharge;
            double cost = each.getValue().objectiveMilliAmps / 1000.0 + perPriceAmps * each.getKey();
            if (charge < leastCharge || (charge == leastCharge && cost < least)) {
                best = each.getValue().plan;
                leastCharge = charge;
                least = cost;
            }
        }
        return best;
    }

    /** By rising price. */
    Iterable<Kept> plans() {
        return kept.values();
    }
}
