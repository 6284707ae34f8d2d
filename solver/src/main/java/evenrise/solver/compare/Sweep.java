package evenrise.solver.compare;

import evenrise.model.file.SideNotes;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.Function;

/** Plans many scenarios side by side, each by one search with the same number of moves; what is finished stays on disk. */
public final class Sweep {
    /** Moves with every group's boards fixed, to see whether that comes to a plan that keeps every rule. */
    private static final long SEATED_MOVES = 3000;

    private final Variation variation;
    private final Store store;
    private final long moves;
    private final long seed;
    private final boolean endsSound;
    private final Function<Found, Plan> finisher;
    private final Set<Planner> running = ConcurrentHashMap.newKeySet();
    private volatile boolean isStopped;

    /** What a search found for a scenario whose project's file has this hash. */
    public record Found(String projectSha256, PlanningRequest request, PlanningOutcome outcome) {}

    /**
     * @param notes of the project, written into each scenario where their places still are
     * @param endsSound whether a plan that keeps every rule is all that is sought
     * @param finisher completes and signs what was found
     */
    public Sweep(
            Variation variation,
            Path folder,
            SideNotes notes,
            long moves,
            long seed,
            boolean endsSound,
            Function<Found, Plan> finisher) {
        this.variation = variation;
        this.store = new Store(folder, notes);
        this.moves = moves;
        this.seed = seed;
        this.endsSound = endsSound;
        this.finisher = finisher;
    }

    /**
     * One finding for each scenario, in their order; after {@link #stop} only of those that were finished.
     *
     * @param told of each finding as it comes
     * @throws WriteFailed where a file could not be written
     */
    public List<ScenarioResult> run(List<Scenario> scenarios, int threads, Consumer<ScenarioResult> told)
            throws WriteFailed {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        Map<Integer, ScenarioResult> found = new ConcurrentHashMap<>();
        try {
            List<Future<?>> futures = new ArrayList<>();
            for (int i = 0; i < scenarios.size(); i++) {
                int number = i;
                futures.add(pool.submit(() -> {
                    Optional<ScenarioResult> finding = find(scenarios.get(number));
                    finding.ifPresent(it -> {
                        found.put(number, it);
                        told.accept(it);
                    });
                    return null;
                }));
            }
            for (Future<?> future : futures) {
                future.get();
            }
        } catch (InterruptedException e) {
            stop();
            Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
            stop();
            if (e.getCause() instanceof WriteFailed failed) {
                throw failed;
            }
            throw new IllegalStateException("a scenario failed", e.getCause());
        } finally {
            pool.shutdownNow();
        }
        return found.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .map(Map.Entry::getValue)
                .toList();
    }

    /** Ends every search; what they have found so far is dropped, so that a later run gives the same as an unbroken one. */
    public void stop() {
        isStopped = true;
        running.forEach(Planner::stop);
    }

    boolean isStopped() {
        return isStopped;
    }

    private Optional<ScenarioResult> find(Scenario scenario) throws WriteFailed {
        if (isStopped) {
            return Optional.empty();
        }
        String sha256 = store.keepProject(scenario);
        Optional<Plan> earlier = store.earlier(scenario, sha256, seed, moves);
        if (earlier.isPresent()) {
            return Optional.of(ScenarioResult.of(scenario, earlier.get()));
        }
        Optional<PlanningOutcome> seated = seated(scenario);
        PlanningRequest request = request(scenario.project(), seated.map(PlanningOutcome::plan), moves);
        PlanningOutcome outcome = endsSound && seated.isPresent() ? seated.get() : planned(request);
        if (isStopped) {
            return Optional.empty();
        }
        Plan plan = finisher.apply(new Found(sha256, request, outcome));
        store.keepPlan(scenario, plan);
        return Optional.of(ScenarioResult.of(scenario, plan));
    }

    /** A sound plan that begins where a packing put the groups; empty where that comes to none. */
    private Optional<PlanningOutcome> seated(Scenario scenario) {
        for (Project project : Seating.of(variation, scenario.makeUp(), scenario.project())) {
            PlanningOutcome outcome = planned(request(project, Optional.empty(), Math.min(moves, SEATED_MOVES)));
            if (isSound(scenario.project(), outcome.plan())) {
                return Optional.of(outcome);
            }
        }
        return Optional.empty();
    }

    private static boolean isSound(Project project, Plan plan) {
        return Referee.judge(project, PlanFinisher.timed(project, plan))
                .violations()
                .isEmpty();
    }

    private PlanningRequest request(Project project, Optional<Plan> from, long budget) {
        return new PlanningRequest(project, from, new Budget.Moves(budget), seed, 1);
    }

    private PlanningOutcome planned(PlanningRequest request) {
        Planner planner = new Planner(request, any -> {});
        running.add(planner);
        if (isStopped) {
            planner.stop();
        }
        PlanningOutcome outcome = planner.plan();
        running.remove(planner);
        return outcome;
    }
}
