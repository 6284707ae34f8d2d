package evenrise.solver.rendering;

import evenrise.solver.document.ChangeTables;
import evenrise.solver.document.Document;
import evenrise.solver.document.NodeCurves;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A plan beside an earlier one: curves over each other, figures, what changed, which sheets to hand out anew. */
final class BeforeAfter {
    private static final int SUPPLY_MILLIMETRES = 156;
    private static final int PANEL_MILLIMETRES = 120;

    /** A place with both its curves. */
    public record Both(String name, NodeChart chart) {}

    private BeforeAfter() {}

    /** None where there is no earlier plan. */
    static Optional<PrintSection> section(Document document, ShownTables shown) {
        return document.tables().changes().map(changes -> {
            Map<String, Object> values = new HashMap<>();
            values.put(
                    "slopes",
                    SlopeSvg.of(document.revised().slopes())
                            .replace("<svg ", "<svg alt=\"Figures as parts of their limits, before and now\" "));
            values.put("curves", curves(document));
            values.put(
                    "tables",
                    List.of(shown.of(changes.kinds()), shown.of(changes.sheets()), shown.of(changes.figures())));
            return new PrintSection("Before and after", "before", List.of(new PrintSection.Part("", values)));
        });
    }

    /** Of the supply, and of every place whose peak moved. */
    private static List<Both> curves(Document document) {
        List<Both> all = new ArrayList<>();
        List<String> moved = document.tables().changes().map(ChangeTables::figures).stream()
                .flatMap(table -> table.rows().stream())
                .filter(each -> each.figure().equals("peak"))
                .map(each -> each.place())
                .toList();
        for (NodeCurves node : document.nodes()) {
            Optional<NodeCurves> before = document.revised().before(node);
            if (before.isPresent() && moved.contains(node.node())) {
                boolean isSupply = node.node().equals(document.supply().node());
                all.add(new Both(
                        Cells.text(node.node())
                                + node.system()
                                        .map(each -> ", system " + Cells.text(each))
                                        .orElse(""),
                        NodeChart.of(
                                node, before, isSupply ? SUPPLY_MILLIMETRES : PANEL_MILLIMETRES, isSupply ? 22 : 12)));
            }
        }
        return all;
    }
}
