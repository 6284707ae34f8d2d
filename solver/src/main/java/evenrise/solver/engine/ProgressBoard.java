package evenrise.solver.engine;

import evenrise.model.plan.Plan;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.optaplanner.core.api.score.buildin.hardsoftlong.HardSoftLongScore;

/** Collects what the searches find and tells the listener of the best, often enough to be alive and no oftener. */
final class ProgressBoard {
    private static final long QUIET_NANOS = 300_000_000;

    private final long startNanos;
    private final Consumer<Progress> listener;
    private HardSoftLongScore best;
    private WorkingPlan bestPlan;
    private long lastTold;
    private long movesKnown;
    private OptionalDouble firstFeasibleSeconds = OptionalDouble.empty();

    ProgressBoard(long startNanos, Consumer<Progress> listener) {
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
        if (becomesFeasible || System.nanoTime() - lastTold > QUIET_NANOS) {
            tell();
        }
    }

    /** Tells of the best once more, so that the last word is true. */
    synchronized void finish() {
        if (bestPlan != null) {
            tell();
        }
    }

    private void tell() {
        WorkingPlan plan = bestPlan;
        Situation situation = Situation.of(plan);
        listener.accept(new Progress(
                elapsedSeconds(),
                movesKnown,
                -best.softScore() / 1000.0,
                situation.peakInrushAmps(),
                situation.supplyImbalancePercent(),
                best.hardScore() == 0 ? 0 : brokenPlaces(plan)));
        lastTold = System.nanoTime();
    }

    /** As the referee counts them. */
    private static int brokenPlaces(WorkingPlan plan) {
        PlanMapper mapper = new PlanMapper(plan.plant());
        Plan finished = PlanFinisher.timed(plan.plant().project, mapper.toPlan(plan));
        return Referee.judge(plan.plant().project, finished).violations().size();
    }
}
