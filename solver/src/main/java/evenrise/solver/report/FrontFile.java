package evenrise.solver.report;

import evenrise.model.contract.Field;
import evenrise.model.plan.Cautions;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import java.util.ArrayList;
import java.util.List;

/** A front of plans as records, for JSON and CSV. */
public record FrontFile(
        @Field(meaning = "Name and version of this format") String format,

        @Field(meaning = "What whoever uses these figures has to know")
        List<String> cautions,

        @Field(meaning = "Name of the project") String project,

        @Field(meaning = "The plan as it is built, without a change")
        FrontRow asBuilt,

        @Field(
                meaning =
                        "Plans of which none is as good for less work, and the one with the fewest moves that cures as much;"
                                + " the first cures all that can be cured, unless the plan chosen cures less")
        List<FrontRow> points,

        @Field(meaning = "No plan of fewer re-terminated breakers keeps every rating; 0 where nothing is known")
        int leastBreakers,

        @Field(
                meaning =
                        "No plan that keeps every hard rule takes fewer moves, breakers and control leads together; 0 where"
                                + " nothing is known")
        int leastMoves) {
    public static final String FORMAT = "evenrise-front/1";

    public static FrontFile of(String project, Front front, FrontPoint chosen) {
        return new FrontFile(
                FORMAT,
                Cautions.ALL,
                project,
                FrontRow.of(front.asBuilt(), "", front.asBuilt() == chosen),
                PlanNames.shown(front, chosen).stream()
                        .map(point ->
                                FrontRow.of(point, PlanNames.of(front, chosen).of(point), point == chosen))
                        .toList(),
                front.leastBreakers(),
                front.leastMoves());
    }

    /** As a table of values: a header and a row a point. */
    public List<List<String>> values() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "moves",
                "breakers",
                "leads",
                "board_settings",
                "hard_violations",
                "objective",
                "peak_inrush_a",
                "supply_imbalance_pct",
                "duration_s",
                "plan",
                "chosen",
                "minutes",
                "same_panel",
                "other_panel",
                "new_circuits",
                "drawn_leads",
                "isolations",
                "shutdowns",
                "margin_pct"));
        rows.add(row(asBuilt));
        points.forEach(each -> rows.add(row(each)));
        return rows;
    }

    private static List<String> row(FrontRow row) {
        return List.of(
                String.valueOf(row.moves()),
                String.valueOf(row.breakers()),
                String.valueOf(row.leads()),
                String.valueOf(row.boardSettings()),
                String.valueOf(row.hardViolations()),
                String.valueOf(row.objective()),
                String.valueOf(row.peakInrushAmps()),
                String.valueOf(row.supplyImbalancePercent()),
                String.valueOf(row.durationSeconds()),
                row.plan(),
                row.isChosen() ? "yes" : "no",
                String.valueOf(row.minutes()),
                String.valueOf(row.samePanel()),
                String.valueOf(row.otherPanel()),
                String.valueOf(row.newCircuits()),
                String.valueOf(row.drawnLeads()),
                String.valueOf(row.isolations()),
                String.valueOf(row.shutdowns()),
                String.valueOf(row.marginPercent()));
    }
}
