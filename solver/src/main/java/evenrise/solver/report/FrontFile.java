package evenrise.solver.report;

import evenrise.model.contract.Field;
import evenrise.model.plan.Cautions;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A front of plans as records, for JSON and CSV. */
public record FrontFile(
        @Field(meaning = "Name and version of this format") String format,

        @Field(meaning = "What whoever uses these figures has to know")
        List<String> cautions,

        @Field(meaning = "Name of the project") String project,

        @Field(meaning = "The plan as it is built, without a change")
        FrontRow asBuilt,

        @Field(meaning = "Plans of which none is as good with fewer moves; the first cures all that can be cured")
        List<FrontRow> points) {
    public static final String FORMAT = "evenrise-front/1";

    /** Name of the file that holds the plan with so many moves. */
    public static String planName(int moves) {
        return String.format(Locale.ROOT, "plan-%04d.json", moves);
    }

    public static FrontFile of(String project, Front front, FrontPoint chosen) {
        return new FrontFile(
                FORMAT,
                Cautions.ALL,
                project,
                FrontRow.of(front.asBuilt(), "", front.asBuilt() == chosen),
                front.points().stream()
                        .map(point -> FrontRow.of(point, planName(point.moves()), point == chosen))
                        .toList());
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
                "chosen"));
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
                row.isChosen() ? "yes" : "no");
    }
}
