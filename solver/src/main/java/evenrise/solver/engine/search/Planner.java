package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Plans one project. {@link #plan()} runs in the caller's thread; {@link #stop()} may be called from any other. */
public final class Planner {
    private final PlanningRequest request;
    private final long startNanos = System.nanoTime();
    private final CompiledProject compiled;
    private final List<Search> searches = new ArrayList<>();
    private final SearchProgress progress;
    private final BoundSource bounds;
    private volatile boolean stopped;

    /** Compiles the project; the budget's time counts from here. */
    public Planner(PlanningRequest request, Consumer<Progress> listener) {
        this(request, listener, BoundSource.NONE);
    }

    /**
     * The same with a source of bounds at its side, which may say beforehand who had best sit where; the search ends when the
     * best plan is proven to be that.
     */
    public Planner(PlanningRequest request, Consumer<Progress> listener, BoundSource bounds) {
        this.bounds = bounds;
        this.request = request;
        this.compiled = new CompiledProject(
                request.project(),
                request.placesAll(),
                request.from().filter(plan -> request.keepsFrom()),
                bounds.shares());
        this.progress = new SearchProgress(startNanos, listener);
    }

    /** Searches until the budget is used or {@link #stop()} is called; gives the best plan either way. */
    public PlanningOutcome plan() {
        PlanMapper mapper = new PlanMapper(compiled);
        PlanSums start = request.from().map(mapper::toSums).orElseGet(() -> FirstPlan.build(compiled));
        WorkingPlan first = WorkingPlan.of(compiled, start.snapshot());
        progress.begin(first, PlanScoreCalculator.score(start));
        boolean isGentle = request.improves() && start.hardCharge() == 0;
        synchronized (searches) {
            for (int i = 0; i < searchCount(request, bounds); i++) {
                searches.add(Search.annealing(first.copy(), request, isGentle, i, startNanos, progress));
            }
        }
        if (stopped) {
            stop();
        }
        SharedIncumbent incumbent = new SharedIncumbent(compiled, progress);
        progress.whenProven(this::stop);
        WorkingPlan best = first;
        long moves = 0;
        List<Double> ends = new ArrayList<>();
        for (Search.Result result : besides(() -> prove(incumbent))) {
            moves += result.moves();
            ends.addAll(result.ends());
            if (best.score() == null || result.plan().score().compareTo(best.score()) > 0) {
                best = result.plan();
            }
        }
        if (request.budget() instanceof Budget.Moves && !stopped) {
            prove(incumbent);
        }
        Optional<WorkingPlan> offered = progress.best();
        if (offered.isPresent()
                && offered.get().score() != null
                && offered.get().score().compareTo(best.score()) > 0) {
            best = offered.get();
        }
        progress.finish();
        Plan plan = mapper.toPlan(best.snapshot());
        return new PlanningOutcome(
                plan, moves, progress.elapsedSeconds(), progress.firstFeasibleSeconds(), progress.provenAmps(), ends);
    }

    /**
     * The best plan so far, timed, whether it keeps every rule or not; empty before there is one. Any thread may ask while
     * the search goes on.
     */
    public Optional<Plan> best() {
        return progress.best()
                .map(best -> PlanFinisher.timed(request.project(), new PlanMapper(compiled).toPlan(best.snapshot())));
    }

    /** One less where a proof goes on beside them that is worth a processor; at least one. */
    static int searchCount(PlanningRequest request, BoundSource bounds) {
        boolean isShared = request.budget() instanceof Budget.Time && bounds.takesAProcessor();
        return isShared ? Math.max(1, request.threads() - 1) : request.threads();
    }

    /** Whatever goes wrong in a proof, in its native part too, costs the proof and never the plan. */
    private void prove(SharedIncumbent incumbent) {
        try {
            bounds.work(request.project(), request.budget(), request.seed(), incumbent);
        } catch (RuntimeException | Error e) {
            bounds.failed(e);
        }
    }

    /** Searches, and where time is the budget {@code other} goes on beside it and ends with it. */
    private List<Search.Result> besides(Runnable other) {
        if (bounds == BoundSource.NONE || !(request.budget() instanceof Budget.Time)) {
            return run();
        }
        Thread prover = new Thread(other, "proofs");
        prover.setDaemon(true);
        prover.start();
        try {
            return run();
        } finally {
            bounds.stop();
            join(prover);
        }
    }

    private static void join(Thread thread) {
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private List<Search.Result> run() {
        return SideBySide.run(searches, this::stop, progress::tellFirst);
    }

    /** Ends the search soon; the best plan so far is kept. */
    public void stop() {
        stopped = true;
        bounds.stop();
        synchronized (searches) {
            searches.forEach(Search::stop);
        }
    }
}
