package evenrise.solver.rework;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Finds the order of work: stages that leave the plant whole, and the steps of each. */
public final class OrderOfWork {
    /** Loads times sets of changes that may be judged for a look at every order. */
    private static final int MOST_JUDGED = 100_000;

    private final BuiltPlant plant;
    private final Plan target;
    private final NightLimits night;
    private final Passage passage;
    private final Optional<EveryOrder> every;

    /** Prepares the way from one plan to another. */
    public OrderOfWork(Project project, Plan built, Plan target) {
        this(project, built, target, NightLimits.NONE);
    }

    /** The same where a night has limits. */
    public OrderOfWork(Project project, Plan built, Plan target, NightLimits night) {
        this(BuiltPlant.of(project, built, Optional.empty()), target, night);
    }

    /** The same where gear has gone or was replaced since the plan was built. */
    public OrderOfWork(BuiltPlant plant, Plan target, NightLimits night) {
        this.night = night;
        this.plant = plant;
        this.target = target;
        this.passage = new Passage(plant, target, night);
        boolean isFew = passage.size() <= EveryOrder.MOST_CHANGES
                && (1L << passage.size()) * plant.project().loads().size() <= MOST_JUDGED;
        this.every = isFew ? Optional.of(new EveryOrder(passage)) : Optional.empty();
    }

    /** Single changes that are put in order. */
    int changes() {
        return passage.size();
    }

    /** No order whose stages are all as short has fewer; 0 where nothing is known. */
    int leastStages(double longestMinutes) {
        return new LeastStages(passage).of(longestMinutes);
    }

    /** @see #withAtLeast */
    public static WorkOrder between(Project project, Plan built, Plan target, int atLeast) {
        return new OrderOfWork(project, built, target).withAtLeast(atLeast);
    }

    /**
     * The order of work.
     *
     * @param atLeast loads that may be worked on at once; more only where that cannot be helped
     */
    public WorkOrder withAtLeast(int atLeast) {
        Optional<List<BitSet>> found =
                every.isPresent() ? every.get().cheapest(atLeast) : new GreedyOrder(passage).stages(atLeast);
        if (found.isEmpty() && !night.equals(night.onlyLive())) {
            WorkOrder longer = new OrderOfWork(plant, target, night.onlyLive()).withAtLeast(atLeast);
            return longer.with(breaches(longer.stages()));
        }
        List<BitSet> sets = found.orElseGet(() -> passage.size() == 0 ? List.of() : List.of(passage.all()));
        List<String> obstacles = new ArrayList<>();
        BitSet done = new BitSet();
        for (int stage = 1; stage <= sets.size(); stage++) {
            BitSet set = sets.get(stage - 1);
            if (found.isEmpty() || passage.loads(set).size() > Math.max(1, atLeast)) {
                obstacles.add("stage " + stage + ": " + obstacle(passage, done, set));
            }
            done.or(set);
        }
        return written(sets, every.isPresent() && found.isPresent(), obstacles);
    }

    Passage passage() {
        return passage;
    }

    /** The order whose stages make these changes, whatever it breaks. */
    WorkOrder laid(List<BitSet> sets) {
        return written(sets, false, List.of());
    }

    private WorkOrder written(List<BitSet> sets, boolean isProven, List<String> obstacles) {
        List<WorkStage> stages = new ArrayList<>();
        OrderCost cost = OrderCost.NOTHING;
        BitSet done = new BitSet();
        for (BitSet set : sets) {
            Passage.Way way = passage.unchecked(done, set);
            cost = cost.plus(way.cost());
            stages.add(stage(passage, done, set, way));
            done.or(set);
        }
        OrderCost least = isProven ? cost : new LeastOrder(passage).beside(cost);
        return new WorkOrder(stages, cost, least, isProven, obstacles, breaches(stages));
    }

    /** What the replay finds, and where a stage is more than the night has room for. */
    private List<Breach> breaches(List<WorkStage> stages) {
        List<Breach> breaches = new ArrayList<>(Replay.of(plant, target, stages, night.live()));
        for (int i = 0; i < stages.size(); i++) {
            for (BrokenRule each : night.brokenBy(stages.get(i))) {
                breaches.add(Breach.of(i + 1, 0, each));
            }
        }
        return breaches;
    }

    private static WorkStage stage(Passage passage, BitSet done, BitSet set, Passage.Way way) {
        BitSet after = (BitSet) done.clone();
        after.or(set);
        List<String> locked = List.copyOf(passage.loads(set));
        List<WorkStep> steps = StageSteps.of(passage, done, set, way);
        List<String> standing = way.off().stream()
                .filter(load -> !locked.contains(load))
                .filter(load -> !passage.isByCommand(way, load))
                .toList();
        return new WorkStage(
                way.isSystemOff()
                        && (way.systemsOff().isEmpty()
                                || way.systemsOff().size()
                                        == passage.project.systems().size()),
                List.copyOf(way.isolation().panels()),
                List.copyOf(way.isolation().boards()),
                locked,
                standing,
                List.copyOf(way.outages()),
                steps,
                passage.after(after),
                passage.broken(after),
                List.copyOf(way.isolation().below()),
                way.systemsOff(),
                new StageMinutes(passage.index, WorkMinutes.of(passage.project), passage.changes).of(steps));
    }

    /** What forbids to begin the stage with a part of it. */
    private static String obstacle(Passage passage, BitSet done, BitSet stage) {
        if (stage.stream().anyMatch(passage::isRemoval)
                && passage.plant.unknown().size() > 1) {
            return "gear is taken out of which nobody states what it draws, before anything else goes to other lines.";
        }
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
                ? "with these loads off, a line or a neutral carries more than it may, or the night has no room for"
                        + " it; the replay says where."
                : "done in parts, it would take the system, a panel, a board or a shutdown group out more often.";
    }
}
