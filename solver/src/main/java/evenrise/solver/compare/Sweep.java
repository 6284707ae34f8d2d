package evenrise.solver.compare;

import evenrise.model.file.SideNotes;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
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
    private final Store store;
    private final long moves;
    private final long seed;
    private final Function<Found, Plan> finisher;
    private final Set<Planner> running = ConcurrentHashMap.newKeySet();
    private volatile boolean isStopped;

    /** What a search found for a scenario whose project's file has this hash. */
    public record Found(String projectSha256, PlanningRequest request, PlanningOutcome outcome) {}

    /**
     * @param notes of the project, written into each scenario where their places still are
     * @param finisher completes and signs what was found
     */
    public Sweep(Path folder, SideNotes notes, long moves, long seed, Function<Found, Plan> finisher) {
        this.store = new Store(folder, notes);
        this.moves = moves;
        this.seed = seed;
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

    private Optional<ScenarioResult> find(Scenario scenario) throws WriteFailed {
        if (isStopped) {
            return Optional.empty();
        }
        String sha256 = store.keepProject(scenario);
        Optional<Plan> earlier = store.earlier(scenario, sha256, seed, moves);
        if (earlier.isPresent()) {
            return Optional.of(ScenarioResult.of(scenario, earlier.get()));
        }
        PlanningRequest request =
                new PlanningRequest(scenario.project(), Optional.empty(), new Budget.Moves(moves), seed, 1);
        Planner planner = new Planner(request, any -> {});
        running.add(planner);
        if (isStopped) {
            planner.stop();
        }
        PlanningOutcome outcome = planner.plan();
        running.remove(planner);
        if (isStopped) {
            return Optional.empty();
        }
        Plan plan = finisher.apply(new Found(sha256, request, outcome));
        store.keepPlan(scenario, plan);
        return Optional.of(ScenarioResult.of(scenario, plan));
    }
}
