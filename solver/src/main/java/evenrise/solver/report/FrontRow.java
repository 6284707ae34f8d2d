package evenrise.solver.report;

import evenrise.model.contract.Field;
import evenrise.model.plan.Metrics;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.MoveKind;

/**
 * One point of a front for other programs.
 */
public record FrontRow(
        @Field(meaning = "Breakers, leads and settings that change, together")
        int moves,

        @Field(meaning = "Loads whose breaker goes to another panel or slot")
        int breakers,

        @Field(meaning = "Loads whose lead goes to another board or output, or whose breaker goes to another panel")
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
        boolean isChosen,

        @Field(
                meaning =
                        "Least time that the work takes, all of it in one go, in minutes by kind as stated or by default")
        double minutes,

        @Field(meaning = "Breakers that go to another slot of their panel")
        int samePanel,

        @Field(meaning = "Breakers that go to another panel, with conductors drawn or lengthened")
        int otherPanel,

        @Field(meaning = "Breakers that are not there yet") int newCircuits,

        @Field(meaning = "Leads that are drawn, since breaker or board is in another panel than before")
        int drawnLeads,

        @Field(meaning = "Panels and boards that are dead for it, each counted once")
        int isolations,

        @Field(meaning = "Systems that are off for it, each counted once")
        int shutdowns,

        @Field(
                meaning = "Least part of what a line may carry, of any node, that running currents leave; below 0 where"
                        + " one is over")
        double marginPercent) {

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
                isChosen,
                point.minutes(),
                point.night().count(MoveKind.SAME_PANEL),
                point.night().count(MoveKind.OTHER_PANEL),
                point.night().count(MoveKind.NEW_CIRCUIT),
                point.night().count(MoveKind.DRAWN_LEAD),
                point.night().count(MoveKind.ISOLATION),
                point.night().count(MoveKind.SHUTDOWN),
                point.marginPercent());
    }
}
