package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Finds the order of work: stages that leave the plant whole, and the steps of each. */
public final class OrderOfWork {
    private OrderOfWork() {}

    /**
     * The order of work from one plan to another.
     *
     * @param atLeast loads that may be worked on at once; more only where that cannot be helped
     */
    public static WorkOrder between(Project project, Plan built, Plan target, int atLeast) {
        Passage passage = new Passage(project, built, target);
        boolean isFew = passage.size() <= EveryOrder.MOST_CHANGES;
        Optional<List<BitSet>> found =
                isFew ? new EveryOrder(passage).cheapest(atLeast) : new GreedyOrder(passage).stages(atLeast);
        List<BitSet> sets = found.orElseGet(() -> passage.size() == 0 ? List.of() : List.of(passage.all()));
        List<WorkStage> stages = new ArrayList<>();
        List<String> obstacles = new ArrayList<>();
        OrderCost cost = OrderCost.NOTHING;
        BitSet done = new BitSet();
        for (BitSet set : sets) {
            Passage.Way way = passage.unchecked(done, set);
            if (found.isEmpty() || passage.loads(set).size() > Math.max(1, atLeast)) {
                obstacles.add("stage " + (stages.size() + 1) + ": " + obstacle(passage, done, set));
            }
            cost = cost.plus(way.cost());
            stages.add(stage(passage, done, set, way));
            done.or(set);
        }
        List<Breach> breaches = Replay.of(project, built, target, stages);
        return new WorkOrder(stages, cost, isFew && found.isPresent(), obstacles, breaches);
    }

    private static WorkStage stage(Passage passage, BitSet done, BitSet set, Passage.Way way) {
        BitSet after = (BitSet) done.clone();
        after.or(set);
        List<String> locked = List.copyOf(passage.loads(set));
        List<String> standing = way.isSystemOff()
                ? List.of()
                : way.off().stream().filter(load -> !locked.contains(load)).toList();
        return new WorkStage(
                way.isSystemOff(),
                locked,
                standing,
                List.copyOf(way.outages()),
                StageSteps.of(passage, done, set, way),
                passage.after(after),
                passage.broken(after));
    }

    /** What forbids to begin the stage with a part of it. */
    private static String obstacle(Passage passage, BitSet done, BitSet stage) {
        for (int change = stage.nextSetBit(0); change >= 0; change = stage.nextSetBit(change + 1)) {
            BitSet part = passage.closure(change, done);
            BitSet after = (BitSet) done.clone();
            after.or(part);
            if (!part.equals(stage)) {
                Optional<String> worse = passage.worse(after);
                if (worse.isPresent()) {
                    return worse.get();
                }
            } else {
                return passage.worse(after)
                        .orElse("each of its loads goes where another one of them is, so all of them must be dead"
                                + " at once.");
            }
        }
        return passage.way(done, stage).isEmpty()
                ? "with these loads dead, a neutral carries more than it may; the replay says where."
                : "done in parts, it would take the system or a shutdown group out more often.";
    }
}
