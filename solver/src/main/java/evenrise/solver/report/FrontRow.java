package evenrise.solver.report;

import evenrise.model.contract.Field;
import evenrise.model.plan.Metrics;
import evenrise.solver.rework.FrontPoint;

/**
 * One point of a front for other programs.
 */
public record FrontRow(
        @Field(meaning = "Breakers, leads and settings that change, together")
        int moves,

        @Field(meaning = "Loads whose breaker goes to another panel or slot")
        int breakers,

        @Field(meaning = "Loads whose lead goes to another board or output")
        int leads,

        @Field(meaning = "Boards that are set anew") int boardSettings,

        @Field(meaning = "Hard rules broken, each place counted")
        int hardViolations,

        @Field(meaning = "Objective, in ampere-equivalents") double objective,

        @Field(meaning = "Peak on the worst phase of the supply, at nominal voltage")
        double peakInrushAmps,

        @Field(meaning = "Largest deviation of a phase from the mean at the supply, over the mean")
        double supplyImbalancePercent,

        @Field(meaning = "Last switch-on, from the command") double durationSeconds,

        @Field(meaning = "Name of its plan file in this folder; empty for the plan as built")
        String plan,

        @Field(meaning = "Whether the order of work leads to it")
        boolean isChosen) {

    static FrontRow of(FrontPoint point, String plan, boolean isChosen) {
        Metrics metrics = point.plan().metrics().orElseThrow();
        return new FrontRow(
                point.moves(),
                point.changes().breakers(),
                point.changes().leads(),
                point.changes().settingsInAll(),
                point.violations(),
                point.objective(),
                metrics.peakInrushAmps(),
                metrics.supplyImbalancePercent(),
                metrics.durationSeconds(),
                plan,
                isChosen);
    }
}
