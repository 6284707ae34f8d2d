package evenrise.solver.document;

import evenrise.solver.report.Json;
import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Grid;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** One self-contained page: nothing is loaded from elsewhere. */
public final class HtmlPage {
    private HtmlPage() {}

    public static String of(Document document) {
        List<String> groups = List.copyOf(new TreeSet<>(document.loads().stream()
                .map(load -> load.group())
                .filter(group -> !group.isEmpty())
                .toList()));
        Played played = new Played(
                document.durationSeconds(),
                CurveSvg.lastSeconds(document),
                CurveSvg.mostAmps(document),
                CurveSvg.LEFT,
                CurveSvg.WIDTH - CurveSvg.LEFT - CurveSvg.RIGHT,
                document.phaseNames(),
                document.loads());
        // A script element ends at its own end tag alone, so no name may hold one.
        String json = Json.of(played).replace("<", "\\u003c");
        return Templates.fill(
                "page.peb",
                Map.of(
                        "document", document,
                        "grids", document.grids().stream().map(HtmlPage::shown).toList(),
                        "curve", CurveSvg.of(document),
                        "groups", groups,
                        "json", json));
    }

    /** A table with its cells as texts. */
    public record Shown(String id, String title, List<Grid.Column> columns, List<List<String>> rows) {}

    static Shown shown(Grid grid) {
        return new Shown(grid.id(), grid.title(), grid.columns(), Cells.of(grid));
    }
}
