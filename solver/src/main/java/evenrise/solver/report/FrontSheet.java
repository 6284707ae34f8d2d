package evenrise.solver.report;

import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import java.util.List;
import java.util.Locale;

/** A front of plans as records, for JSON and CSV. */
public record FrontSheet(String project, FrontRow asBuilt, List<FrontRow> points) {
    /** Name of the file that holds the plan with so many moves. */
    public static String planName(int moves) {
        return String.format(Locale.ROOT, "plan-%04d.json", moves);
    }

    public static FrontSheet of(String project, Front front, FrontPoint chosen) {
        return new FrontSheet(
                project,
                FrontRow.of(front.asBuilt(), "", front.asBuilt() == chosen),
                front.points().stream()
                        .map(point -> FrontRow.of(point, planName(point.moves()), point == chosen))
                        .toList());
    }

    /** A header and a line a point, RFC 4180; no field needs quotes. */
    public String csv() {
        StringBuilder text = new StringBuilder("moves,breakers,leads,board_settings,hard_violations,objective,"
                + "peak_inrush_a,supply_imbalance_pct,duration_s,plan,chosen\r\n");
        line(asBuilt, text);
        points.forEach(row -> line(row, text));
        return text.toString();
    }

    private static void line(FrontRow row, StringBuilder text) {
        text.append(row.moves())
                .append(',')
                .append(row.breakers())
                .append(',')
                .append(row.leads())
                .append(',')
                .append(row.boardSettings())
                .append(',')
                .append(row.hardViolations())
                .append(',')
                .append(row.objective())
                .append(',')
                .append(row.peakInrushAmps())
                .append(',')
                .append(row.supplyImbalancePercent())
                .append(',')
                .append(row.durationSeconds())
                .append(',')
                .append(row.plan())
                .append(',')
                .append(row.isChosen() ? "yes" : "no")
                .append("\r\n");
    }
}
