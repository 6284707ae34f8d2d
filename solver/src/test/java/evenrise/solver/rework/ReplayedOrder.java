package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What an order of given stages costs, where the replay of its steps has nothing against it. */
final class ReplayedOrder {
    private ReplayedOrder() {}

    static Optional<OrderCost> cost(Passage passage, Plan target, List<BitSet> sets) {
        List<WorkStage> stages = new ArrayList<>();
        BitSet done = new BitSet();
        OrderCost cost = OrderCost.NOTHING;
        for (BitSet set : sets) {
            Passage.Way way = passage.unchecked(done, set);
            BitSet after = (BitSet) done.clone();
            after.or(set);
            stages.add(new WorkStage(
                    way.isSystemOff(),
                    List.copyOf(way.isolation().panels()),
                    List.copyOf(way.isolation().boards()),
                    List.copyOf(passage.loads(set)),
                    List.of(),
                    List.copyOf(way.outages()),
                    StageSteps.of(passage, done, set, way),
                    passage.after(after),
                    0));
            cost = cost.plus(way.cost());
            done = after;
        }
        return Replay.of(passage.plant, target, stages, Set.of()).isEmpty() ? Optional.of(cost) : Optional.empty();
    }

    /** Of loads locked out at once one is no matter. */
    static OrderCost leastOneAtOnce(OrderCost cost) {
        return new OrderCost(
                cost.systemOffs(), cost.isolations(), Math.max(1, cost.mostLockedOut()), cost.outages(), cost.stages());
    }
}
