package evenrise.solver.engine.search;

import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;
import org.optaplanner.core.api.solver.SolverFactory;
import org.optaplanner.core.config.heuristic.selector.common.SelectionCacheType;
import org.optaplanner.core.config.heuristic.selector.common.SelectionOrder;
import org.optaplanner.core.config.heuristic.selector.move.factory.MoveIteratorFactoryConfig;
import org.optaplanner.core.config.localsearch.LocalSearchPhaseConfig;
import org.optaplanner.core.config.localsearch.decider.forager.LocalSearchForagerConfig;
import org.optaplanner.core.config.score.director.ScoreDirectorFactoryConfig;
import org.optaplanner.core.config.solver.EnvironmentMode;
import org.optaplanner.core.config.solver.SolverConfig;
import org.optaplanner.core.config.solver.termination.TerminationConfig;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactory;
import org.optaplanner.core.impl.heuristic.selector.move.factory.MoveIteratorFactoryToMoveSelectorBridge;
import org.optaplanner.core.impl.localsearch.DefaultLocalSearchPhase;
import org.optaplanner.core.impl.localsearch.decider.LocalSearchDecider;
import org.optaplanner.core.impl.localsearch.decider.acceptor.Acceptor;
import org.optaplanner.core.impl.localsearch.decider.forager.LocalSearchForagerFactory;
import org.optaplanner.core.impl.phase.AbstractPhase;
import org.optaplanner.core.impl.phase.event.PhaseLifecycleListenerAdapter;
import org.optaplanner.core.impl.phase.scope.AbstractPhaseScope;
import org.optaplanner.core.impl.solver.DefaultSolver;
import org.optaplanner.core.impl.solver.termination.Termination;

/** One local search, from one plan to a better one. */
final class Search implements Callable<Search.Result> {
    /**
     * @param plan the best plan found
     * @param moves tried
     * @param ends objectives in which its annealings have ended
     */
    record Result(WorkingPlan plan, long moves, List<Double> ends) {}

    private final WorkingPlan start;
    private final DefaultSolver<WorkingPlan> solver;
    private final Supplier<List<Double>> ends;
    private volatile boolean stopped;

    /** A search that mends what is broken and anneals the objective. */
    static Search annealing(
            WorkingPlan start,
            PlanningRequest request,
            boolean isGentle,
            int number,
            long startNanos,
            SearchProgress progress) {
        long seed = request.seed() + 1_000_003L * number;
        SolverConfig config = config(termination(request.budget(), startNanos), seed);
        Annealing annealing = new Annealing(start.compiled(), isGentle, seed);
        return new Search(start, build(config, annealing), annealing::ends, progress);
    }

    /** A search that somebody leads. */
    static Search steered(
            WorkingPlan start, Steering steering, Budget budget, long seed, long startNanos, SearchProgress progress) {
        return new Search(start, build(config(termination(budget, startNanos), seed), steering), List::of, progress);
    }

    private Search(
            WorkingPlan start,
            DefaultSolver<WorkingPlan> solver,
            Supplier<List<Double>> ends,
            SearchProgress progress) {
        this.start = start;
        this.ends = ends;
        this.solver = solver;
        solver.addPhaseLifecycleListener(new PhaseLifecycleListenerAdapter<>() {
            @Override
            public void phaseStarted(AbstractPhaseScope<WorkingPlan> scope) {
                if (stopped) {
                    solver.terminateEarly(); // a stop that came before the solver began was forgotten when it did
                }
            }
        });
        solver.addEventListener(event ->
                progress.offer(event.getNewBestSolution(), (HardSoftLongScore) event.getNewBestScore(), moves()));
    }

    /** A solver that anneals. */
    static DefaultSolver<WorkingPlan> build(SolverConfig config, Annealing annealing) {
        return withOnePhase(solver(config), config, new MoveStream(), annealing);
    }

    /** A solver that somebody leads. */
    static DefaultSolver<WorkingPlan> build(SolverConfig config, Steering steering) {
        DefaultSolver<WorkingPlan> solver = solver(config);
        SteeredAcceptor acceptor = new SteeredAcceptor(steering, termination(solver));
        return withOnePhase(solver, config, new SteeredMoves(steering, acceptor, solver::terminateEarly), acceptor);
    }

    private static DefaultSolver<WorkingPlan> solver(SolverConfig config) {
        return (DefaultSolver<WorkingPlan>)
                SolverFactory.<WorkingPlan>create(config).buildSolver();
    }

    private static Termination<WorkingPlan> termination(DefaultSolver<WorkingPlan> solver) {
        return ((AbstractPhase<WorkingPlan>) solver.getPhaseList().get(0)).getPhaseTermination();
    }

    /** The solver with one phase in the place of its own, in which our acceptor decides: the stock ones know only the score. */
    private static DefaultSolver<WorkingPlan> withOnePhase(
            DefaultSolver<WorkingPlan> solver,
            SolverConfig config,
            MoveIteratorFactory<WorkingPlan, Rearrangement> moves,
            Acceptor<WorkingPlan> acceptor) {
        Termination<WorkingPlan> termination = termination(solver);
        LocalSearchDecider<WorkingPlan> decider = new LocalSearchDecider<>(
                "",
                termination,
                new MoveIteratorFactoryToMoveSelectorBridge<>(moves, true),
                acceptor,
                LocalSearchForagerFactory.<WorkingPlan>create(new LocalSearchForagerConfig().withAcceptedCountLimit(1))
                        .buildForager());
        boolean asserts = config.getEnvironmentMode() == EnvironmentMode.FULL_ASSERT;
        decider.setAssertMoveScoreFromScratch(asserts);
        decider.setAssertExpectedUndoMoveScore(asserts);
        DefaultLocalSearchPhase.Builder<WorkingPlan> phase =
                new DefaultLocalSearchPhase.Builder<>(0, "", termination, decider);
        phase.setAssertStepScoreFromScratch(asserts);
        phase.setAssertExpectedStepScore(asserts);
        DefaultLocalSearchPhase<WorkingPlan> annealing = phase.build();
        annealing.setSolver(solver);
        solver.getPhaseList().set(0, annealing);
        return solver;
    }

    @Override
    public Result call() {
        return new Result(solver.solve(start), moves(), ends.get());
    }

    void stop() {
        stopped = true;
        solver.terminateEarly();
    }

    private long moves() {
        return solver.getSolverScope().getScoreCalculationCount();
    }

    static SolverConfig config(TerminationConfig termination, long seed) {
        return new SolverConfig()
                .withSolutionClass(WorkingPlan.class)
                .withEntityClasses(LoadPlacement.class, BoardSetup.class)
                .withEnvironmentMode(EnvironmentMode.REPRODUCIBLE)
                .withRandomSeed(seed)
                .withScoreDirectorFactory(
                        new ScoreDirectorFactoryConfig().withIncrementalScoreCalculatorClass(PlanScoreCalculator.class))
                .withPhases(new LocalSearchPhaseConfig()
                        .withMoveSelectorConfig(new MoveIteratorFactoryConfig()
                                .withMoveIteratorFactoryClass(MoveStream.class)
                                .withCacheType(SelectionCacheType.JUST_IN_TIME)
                                .withSelectionOrder(SelectionOrder.RANDOM)))
                .withTerminationConfig(termination);
    }

    private static TerminationConfig termination(Budget budget, long startNanos) {
        if (budget instanceof Budget.Moves moves) {
            return new TerminationConfig().withScoreCalculationCountLimit(Math.max(1, moves.limit()));
        }
        long left = ((Budget.Time) budget).limit().toMillis() - (System.nanoTime() - startNanos) / 1_000_000;
        return new TerminationConfig().withMillisecondsSpentLimit(Math.max(1, left));
    }
}
