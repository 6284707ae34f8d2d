package evenrise.solver.engine.search;

import evenrise.model.plan.Plan;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;

/** Collects what the searches find and tells the listener of the best, often enough to be alive and no oftener. */
final class SearchProgress {
    private static final long QUIET_NANOS = 300_000_000;

    /** Telling takes at most one part in so many of the time. */
    private static final int TOLD_PART = 20;

    /** The search's sums and the referee's agree to less than this. */
    private static final double ROUNDING_AMPS = 1e-4;

    private final long startNanos;
    private final Consumer<Progress> listener;
    private HardSoftLongScore best;
    private WorkingPlan bestPlan;
    private long lastTold;
    private long quietNanos = QUIET_NANOS;
    private long movesKnown;
    private OptionalDouble firstFeasibleSeconds = OptionalDouble.empty();
    private double provenAmps;
    private boolean isProven;
    private boolean isCounting;
    private boolean hasTold;
    private Runnable whenProven = () -> {};

    SearchProgress(long startNanos, Consumer<Progress> listener) {
        this.startNanos = startNanos;
        this.listener = listener;
        this.lastTold = startNanos - 2 * QUIET_NANOS;
    }

    double elapsedSeconds() {
        return (System.nanoTime() - startNanos) / 1e9;
    }

    synchronized OptionalDouble firstFeasibleSeconds() {
        return firstFeasibleSeconds;
    }

    /** Calls {@code action} once, when the best plan is proven to be the best there is. */
    synchronized void whenProven(Runnable action) {
        whenProven = action;
    }

    synchronized double provenAmps() {
        return provenAmps;
    }

    /** The best plan that anyone has offered. */
    synchronized Optional<WorkingPlan> best() {
        return Optional.ofNullable(bestPlan);
    }

    /** No plan that keeps every rule has a smaller objective. */
    synchronized void bound(double objectiveAmps) {
        if (objectiveAmps > provenAmps) {
            provenAmps = objectiveAmps;
            compareWithBound();
            if (isDue() && best != null) {
                tell();
            }
        }
    }

    /** Scores are rounded to a milliampere, so the last word is the objective itself. */
    private void compareWithBound() {
        boolean isClose = best != null
                && best.hardScore() == 0
                && -best.softScore() / 1000.0 <= provenAmps + 2 * Proof.PROVEN_AMPS;
        if (isClose && !isProven) {
            PlanSums sums = bestPlan.sums();
            double amps = sums.objective();
            isProven = amps <= provenAmps + Proof.PROVEN_AMPS - ROUNDING_AMPS;
            if (isProven) {
                whenProven.run();
            }
        }
    }

    /** The plan that searches begin at. It is told of by {@link #tellFirst()}, and nothing before, unless it keeps every rule. */
    synchronized void begin(WorkingPlan plan, HardSoftLongScore score) {
        best = score;
        bestPlan = plan;
        isCounting = true;
        if (score.hardScore() == 0) {
            firstFeasibleSeconds = OptionalDouble.of(elapsedSeconds());
        }
    }

    /** Of a very large plan it takes long to count what it breaks; searches go on meanwhile. */
    void tellFirst() {
        long begin = System.nanoTime();
        WorkingPlan plan;
        HardSoftLongScore score;
        synchronized (this) {
            plan = bestPlan;
            score = best;
        }
        int broken = score.hardScore() == 0 ? 0 : brokenPlaces(plan);
        synchronized (this) {
            isCounting = false;
            if (!hasTold) {
                tell(plan, score, broken, begin);
            }
        }
    }

    /** A search has found a new best plan of its own. */
    synchronized void offer(WorkingPlan plan, HardSoftLongScore score, long moves) {
        movesKnown = Math.max(movesKnown, moves);
        boolean becomesFeasible = score.hardScore() == 0 && firstFeasibleSeconds.isEmpty();
        if (becomesFeasible) {
            firstFeasibleSeconds = OptionalDouble.of(elapsedSeconds());
        }
        if (best != null && score.compareTo(best) <= 0) {
            return;
        }
        best = score;
        bestPlan = plan;
        compareWithBound();
        if (becomesFeasible || isDue()) {
            tell();
        }
    }

    /** Tells of the best once more, so that the last word is true. */
    synchronized void finish() {
        if (bestPlan != null) {
            tell();
        }
    }

    private boolean isDue() {
        return !isCounting && System.nanoTime() - lastTold > quietNanos;
    }

    private void tell() {
        long begin = System.nanoTime();
        tell(bestPlan, best, best.hardScore() == 0 ? 0 : brokenPlaces(bestPlan), begin);
    }

    private void tell(WorkingPlan plan, HardSoftLongScore score, int broken, long beginNanos) {
        PlanSums sums = plan.sums();
        listener.accept(new Progress(
                elapsedSeconds(),
                movesKnown,
                -score.softScore() / 1000.0,
                sums.peakInrushAmps(),
                sums.supplyImbalancePercent(),
                broken,
                provenAmps));
        hasTold = true;
        lastTold = System.nanoTime();
        // What is told of a very large plan takes long to count: it must not hold up the search.
        quietNanos = Math.max(QUIET_NANOS, TOLD_PART * (lastTold - beginNanos));
    }

    /** As the referee counts them. */
    private static int brokenPlaces(WorkingPlan plan) {
        PlanMapper mapper = new PlanMapper(plan.compiled());
        Plan finished = PlanFinisher.timed(plan.compiled().project, mapper.toPlan(plan.snapshot()));
        return Referee.judge(plan.compiled().project, finished).violations().size();
    }
}
