package evenrise.solver.engine.nearby;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The best plan met so far for each number of moves, of those that no plan of fewer moves equals. */
final class NearbyArchive {
    /** A broken rule, however little, weighs more than any objective. */
    private static final long RULES_FIRST = 1_000_000_000_000L;

    private final long[] bestUpTo;
    private final TreeMap<Integer, Kept> kept = new TreeMap<>();
    private final PlanMapper mapper;

    private record Kept(PlanSnapshot plan, long hardCharge, long objectiveMilliAmps) {
        long value() {
            return NearbyArchive.value(hardCharge, objectiveMilliAmps);
        }
    }

    NearbyArchive(CompiledProject compiled) {
        mapper = new PlanMapper(compiled);
        bestUpTo = new long[2 * compiled.loadCount() + 1];
        Arrays.fill(bestUpTo, Long.MAX_VALUE);
    }

    /** Keeps the plan where it is better than all of as few moves. */
    void offer(PlanSums sums, int moves) {
        if (value(sums.hardCharge(), sums.objectiveMilliAmps()) < bestUpTo[moves]) {
            keep(moves, new Kept(sums.snapshot(), sums.hardCharge(), sums.objectiveMilliAmps()));
        }
    }

    /** Takes over whatever is better in another one. */
    void offerAll(NearbyArchive other) {
        other.kept.forEach((moves, each) -> {
            if (each.value() < bestUpTo[moves]) {
                keep(moves, each);
            }
        });
    }

    private void keep(int moves, Kept plan) {
        long value = plan.value();
        for (int m = moves; m < bestUpTo.length && bestUpTo[m] > value; m++) {
            bestUpTo[m] = value;
            if (m > moves) {
                kept.remove(m);
            }
        }
        kept.put(moves, plan);
    }

    private static long value(long hardCharge, long objectiveMilliAmps) {
        long charge = Math.min(hardCharge, Long.MAX_VALUE / RULES_FIRST / 2);
        return charge * RULES_FIRST + objectiveMilliAmps;
    }

    /** The plan that a price per move would choose. */
    PlanSnapshot best(double perMoveAmps) {
        PlanSnapshot best = null;
        long leastCharge = Long.MAX_VALUE;
        double least = Double.POSITIVE_INFINITY;
        for (Map.Entry<Integer, Kept> each : kept.entrySet()) {
            long charge = each.getValue().hardCharge;
            double cost = each.getValue().objectiveMilliAmps / 1000.0 + perMoveAmps * each.getKey();
            if (charge < leastCharge || (charge == leastCharge && cost < least)) {
                best = each.getValue().plan;
                leastCharge = charge;
                least = cost;
            }
        }
        return best;
    }

    /** Every plan kept, by rising moves: as it falls in broken rules, then in the objective. */
    List<NearbyPlan> plans() {
        List<NearbyPlan> plans = new ArrayList<>();
        kept.forEach((moves, each) -> plans.add(
                new NearbyPlan(moves, each.hardCharge, each.objectiveMilliAmps / 1000.0, mapper.toPlan(each.plan))));
        return plans;
    }

    List<PlanSnapshot> snapshots() {
        return kept.values().stream().map(Kept::plan).toList();
    }
}
