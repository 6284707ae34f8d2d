package evenrise.solver.engine;

import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/** Plans one project. {@link #plan()} runs in the caller's thread; {@link #stop()} may be called from any other. */
public final class Planner {
    private final PlanningRequest request;
    private final long startNanos = System.nanoTime();
    private final Plant plant;
    private final List<Search> searches = new ArrayList<>();
    private final ProgressBoard progress;
    private volatile boolean stopped;

    /** Compiles the project; the budget's time counts from here. */
    public Planner(PlanningRequest request, Consumer<Progress> listener) {
        this.request = request;
        this.plant = new Plant(request.project());
        this.progress = new ProgressBoard(startNanos, listener);
    }

    /** Searches until the budget is used or {@link #stop()} is called; gives the best plan either way. */
    public PlanningOutcome plan() {
        PlanMapper mapper = new PlanMapper(plant);
        Situation start = request.from().map(mapper::toSituation).orElseGet(() -> FirstPlan.build(plant));
        WorkingPlan first = mapper.toWorkingPlan(start);
        progress.offer(first, PlanScoreCalculator.score(start), 0);
        synchronized (searches) {
            for (int i = 0; i < request.threads(); i++) {
                searches.add(new Search(first.copy(), request, i, startNanos, progress));
            }
        }
        if (stopped) {
            stop();
        }
        WorkingPlan best = first;
        long moves = 0;
        for (Search.Result result : run()) {
            moves += result.moves();
            if (best.score() == null || result.plan().score().compareTo(best.score()) > 0) {
                best = result.plan();
            }
        }
        progress.finish();
        Plan plan = mapper.toPlan(best);
        return new PlanningOutcome(plan, moves, progress.elapsedSeconds(), progress.firstFeasibleSeconds());
    }

    private List<Search.Result> run() {
        ExecutorService pool = Executors.newFixedThreadPool(request.threads());
        try {
            List<Future<Search.Result>> futures =
                    searches.stream().map(pool::submit).toList();
            List<Search.Result> results = new ArrayList<>();
            for (Future<Search.Result> future : futures) {
                results.add(future.get());
            }
            return results;
        } catch (InterruptedException e) {
            stop();
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the search was interrupted", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("the search failed", e.getCause());
        } finally {
            pool.shutdown();
        }
    }

    /** Ends the search soon; the best plan so far is kept. */
    public void stop() {
        stopped = true;
        synchronized (searches) {
            searches.forEach(Search::stop);
        }
    }
}
