package evenrise.solver.report;

import evenrise.model.plan.Metrics;
import evenrise.solver.rework.FrontPoint;

/**
 * One point of a front for other programs.
 *
 * @param plan name of its plan file; empty for the plan as built
 */
record FrontRow(
        int moves,
        int breakers,
        int leads,
        int boardSettings,
        int hardViolations,
        double objective,
        double peakInrushAmps,
        double supplyImbalancePercent,
        double durationSeconds,
        String plan,
        boolean isChosen) {

    static FrontRow of(FrontPoint point, String plan, boolean isChosen) {
        Metrics metrics = point.plan().metrics().orElseThrow();
        return new FrontRow(
                point.moves(),
                point.changes().breakers(),
                point.changes().leads(),
                point.changes().settings().size(),
                point.violations(),
                point.objective(),
                metrics.peakInrushAmps(),
                metrics.supplyImbalancePercent(),
                metrics.durationSeconds(),
                plan,
                isChosen);
    }
}
