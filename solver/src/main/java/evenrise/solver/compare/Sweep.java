package evenrise.solver.compare;

import evenrise.model.file.SideNotes;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;

/** Plans many scenarios side by side, each by one search with the same number of moves; what is finished stays on disk. */
public final class Sweep {
    private final Variation variation;
    private final Store store;
    private final long moves;
    private final long seed;
    private final boolean endsSound;
    private final ScenarioPlanner planner;
    private volatile boolean isStopped;

    /** What a search found for a scenario whose project's file has this hash. */
    public record Found(String projectSha256, PlanningRequest request, PlanningOutcome outcome) {}

    private record Open(int number, Scenario scenario, String sha256) {}

    private static final class NotKept extends RuntimeException {
        private static final long serialVersionUID = 1;

        NotKept(WriteFailed cause) {
            super(cause);
        }

        WriteFailed failure() {
            return (WriteFailed) getCause();
        }
    }

    /**
     * @param notes of the project, written into each scenario where their places still are
     * @param endsSound whether a plan that keeps every rule is all that is sought
     * @param planner of what has no plan on disk
     */
    public Sweep(
            Variation variation,
            Path folder,
            SideNotes notes,
            long moves,
            long seed,
            boolean endsSound,
            ScenarioPlanner planner) {
        this.variation = variation;
        this.store = new Store(folder, notes);
        this.moves = moves;
        this.seed = seed;
        this.endsSound = endsSound;
        this.planner = planner;
    }

    /**
     * One finding for each scenario, in their order; after {@link #stop} only of those that were finished.
     *
     * @param told of each finding as it comes
     * @throws WriteFailed where a file could not be written
     */
    public List<ScenarioResult> run(List<Scenario> scenarios, Consumer<ScenarioResult> told) throws WriteFailed {
        Map<Integer, ScenarioResult> found = new TreeMap<>();
        List<Open> open = new ArrayList<>();
        for (int i = 0; i < scenarios.size() && !isStopped; i++) {
            Scenario scenario = scenarios.get(i);
            String sha256 = store.keepProject(scenario);
            Optional<Plan> earlier = store.earlier(scenario, sha256, seed, moves);
            if (earlier.isPresent()) {
                ScenarioResult result = ScenarioResult.of(scenario, earlier.get());
                found.put(i, result);
                told.accept(result);
            } else {
                open.add(new Open(i, scenario, sha256));
            }
        }
        try {
            planner.run(open.stream().map(this::order).toList(), (number, plan) -> {
                Open landed = open.get(number);
                keep(landed.scenario(), plan);
                ScenarioResult result = ScenarioResult.of(landed.scenario(), plan);
                found.put(landed.number(), result);
                told.accept(result);
            });
        } catch (NotKept e) {
            stop();
            throw e.failure();
        }
        return List.copyOf(found.values());
    }

    private void keep(Scenario scenario, Plan plan) {
        try {
            store.keepPlan(scenario, plan);
        } catch (WriteFailed e) {
            throw new NotKept(e);
        }
    }

    private ScenarioPlanner.Order order(Open open) {
        Scenario scenario = open.scenario();
        return new ScenarioPlanner.Order(
                scenario.key(),
                () -> new ScenarioSearch.Sought(
                        open.sha256(),
                        scenario.project(),
                        Seating.of(variation, scenario.makeUp(), scenario.project()),
                        moves,
                        seed,
                        endsSound));
    }

    /** Ends every search; what they have found so far is dropped, so that a later run gives the same as an unbroken one. */
    public void stop() {
        isStopped = true;
        planner.stop();
    }

    boolean isStopped() {
        return isStopped;
    }
}
