package evenrise.solver.exact;

import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;

/**
 * Proves bounds of small projects by the exact model: first of the relaxation without boards, which often is as good and
 * always is smaller, then of the whole.
 */
public final class ExactProver implements BoundSource {
    /** Larger projects are left alone, before anything native is loaded. */
    public static final int MOST_LOADS = 60;

    /**
     * Seconds, or the solver's measure of work, of the first look at each model; the next are longer. The solver tells what
     * it has proven only at the end of one, and each leaves out what costs more than the search's best plan by then.
     */
    private static final double FIRST_LOOK = 2;

    private static final double GROWTH = 2.5;

    /** Of the gap, where both shares of the objective are known: what costs more than this part of it is not looked at. */
    private static final double FIRST_PART = 0.25;

    private static final double LEAST_PART = 1.0 / 16;

    /** A gap as small as this is looked at whole. */
    private static final double CLOSE_AMPS = 0.01;

    /** With counted moves, so much of the solver's own measure of work a move, within bounds. */
    private static final double WORK_A_MOVE = 1.0 / 50_000;

    private static final double LEAST_WORK = 1;
    private static final double MOST_WORK = 60;

    /** What an attempt ended with. */
    private enum Outcome {
        /** Nothing is left to prove of the model, or nobody asks for it any longer. */
        SOLVED,
        /** No plan costs as little as was looked for. */
        RAISED,
        OPEN
    }

    private final int workers;
    private final Consumer<String> note;
    private ExactSearch current;
    private boolean stopped;
    private ExactKnown known = ExactKnown.peak(0);

    /**
     * @param workers threads of the solver, where the budget is a time
     * @param note told why nothing can be proven, where that is so
     */
    public ExactProver(int workers, Consumer<String> note) {
        this.workers = workers;
        this.note = note;
    }

    /** Whether the project is one whose optimum the prover tries to prove. */
    public static boolean isSmall(Project project) {
        return project.loads().size() <= MOST_LOADS && project.loads().stream().anyMatch(Load::switched);
    }

    /** Told before the work begins what is proven already. */
    void know(ExactKnown value) {
        known = value;
    }

    @Override
    public void work(Project project, Budget budget, long seed, Incumbent incumbent) {
        if (!isSmall(project)) {
            return;
        }
        ExactEffort effort = effort(budget, seed);
        if (known.peakAmps() == 0) {
            known = ExactKnown.peak(ProvenBounds.of(project).peakInrushAmps());
        }
        double[] proven = {incumbent.proven()};
        try {
            boolean isRelaxedSolved = known.ofBothShares();
            boolean isSolved = false;
            double part = FIRST_PART;
            double look = FIRST_LOOK;
            while (!isSolved && !effort.isUp() && !isStopped()) {
                isRelaxedSolved = isRelaxedSolved
                        || attempt(project, false, 1, effort.part(look), incumbent, proven) == Outcome.SOLVED;
                Outcome outcome = attempt(project, true, part, effort.part(look), incumbent, proven);
                isSolved = outcome == Outcome.SOLVED;
                if (outcome == Outcome.OPEN) {
                    look *= GROWTH;
                    part = Math.max(LEAST_PART, part / 2);
                }
            }
        } catch (Unfit e) {
            note.accept("nothing is proven of this project: " + e.getMessage());
        }
    }

    private ExactEffort effort(Budget budget, long seed) {
        if (budget instanceof Budget.Time time) {
            return ExactEffort.seconds(time.limit().toMillis() / 1000.0, workers, seed);
        }
        double work = ((Budget.Moves) budget).limit() * WORK_A_MOVE;
        return ExactEffort.work(Math.min(MOST_WORK, Math.max(LEAST_WORK, work)), seed);
    }

    /**
     * @param part of what lies between what is proven and the best plan: only plans in the lower part are looked at
     */
    private Outcome attempt(
            Project project,
            boolean withBoards,
            double part,
            ExactEffort effort,
            Incumbent incumbent,
            double[] proven) {
        if (isStopped()) {
            return Outcome.SOLVED;
        }
        Optional<Plan> best = incumbent.best();
        double most = best.map(plan -> Referee.judge(project, plan).metrics().objective())
                .orElse(Double.POSITIVE_INFINITY);
        double target = target(proven[0], most, part);
        DoubleConsumer found = amps -> {
            synchronized (proven) {
                proven[0] = Math.max(proven[0], amps);
            }
            incumbent.bound(amps);
        };
        ExactModel model;
        try {
            model = new ExactModel(project, withBoards, known.mostSeconds(project, target));
        } catch (NoTime e) {
            if (target < most) {
                found.accept(target);
                return Outcome.RAISED;
            }
            throw e;
        }
        model.minimize(known);
        model.within(proven[0], target);
        best.ifPresent(model::hint);
        ExactSearch search = new ExactSearch(project, model, withBoards, effort, found, incumbent::plan);
        if (!begin(search)) {
            return Outcome.SOLVED;
        }
        ExactSearch.End end = search.run();
        if (end == ExactSearch.End.NO_PLAN && target < most) {
            found.accept(target);
            return Outcome.RAISED;
        }
        return end == ExactSearch.End.OPEN ? Outcome.OPEN : Outcome.SOLVED;
    }

    /** Where little time is left to plans, the model is small; so the least costly are looked at first. */
    private double target(double provenAmps, double mostAmps, double part) {
        double between = mostAmps - provenAmps;
        return known.ofBothShares() && Double.isFinite(mostAmps) && between > CLOSE_AMPS
                ? provenAmps + part * between
                : mostAmps;
    }

    private synchronized boolean begin(ExactSearch search) {
        current = search;
        return !stopped;
    }

    private synchronized boolean isStopped() {
        return stopped;
    }

    @Override
    public synchronized void stop() {
        stopped = true;
        if (current != null) {
            current.stop();
        }
    }
}
