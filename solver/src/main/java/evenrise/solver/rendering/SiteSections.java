package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.PanelTest;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.report.BoardUse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What is taken to site: settings, leads, what to try and measure, labels. */
final class SiteSections {
    private static final int LABELS_ABREAST = 4;

    /** A board's settings and all of its outputs, those that stay open, too. */
    public record Landing(String name, Map<String, String> settings, List<Map<String, String>> rows) {}

    /** A panel's breakers with what the whole panel is planned to draw. */
    public record Commissioned(String name, Map<String, String> node, List<Map<String, String>> rows) {}

    private final DocumentTables tables;
    private final ShownTables shown;

    SiteSections(Document document, ShownTables shown) {
        this.tables = document.tables();
        this.shown = shown;
    }

    PrintSection settings() {
        return PrintSections.section(
                "Boards: settings",
                "settings",
                PrintSections.parts(shown.of(tables.settings()).byKey()),
                rows -> Map.of("rows", rows, "eachOutput", BoardUse.EACH_OUTPUT));
    }

    PrintSection landing() {
        Map<String, List<Map<String, String>>> leads = leads();
        ShownTable<BoardUse> settings = shown.of(tables.settings());
        Map<String, Map<String, String>> byBoard = new HashMap<>();
        settings.byKey(BoardUse::board).forEach((board, rows) -> byBoard.put(board, rows.get(0)));
        List<PrintBlock> boards = settings.rows().stream()
                .map(each -> new PrintBlock(each.board(), outputs(each, leads.getOrDefault(each.board(), List.of()))))
                .toList();
        return PrintSections.section(
                "Boards: landing list",
                "landing",
                PrintBlock.parts(boards, PrintSections.ROWS),
                part -> Map.of(
                        "note",
                        tables.landing().note(),
                        "eachOutput",
                        BoardUse.EACH_OUTPUT,
                        "boards",
                        part.stream()
                                .map(each -> new Landing(each.name(), byBoard.get(each.of()), each.rows()))
                                .toList()));
    }

    /** In the order of the outputs, so that nobody wonders what becomes of the next terminal. */
    private static List<Map<String, String>> outputs(BoardUse board, List<Map<String, String>> leads) {
        List<Map<String, String>> all = new ArrayList<>();
        leads.forEach(row -> all.add(PrintSections.filled(row, "contactor", "offAfter", "set", "open")));
        board.freeOutputs()
                .forEach(output -> all.add(Map.of("output", String.valueOf(output), "open", "unused, leave open")));
        all.sort(Comparator.comparingInt(row -> Integer.parseInt(row.get("output"))));
        return all;
    }

    /** By board; each with its breaker as {@code 20/2}, which a spreadsheet would take for a date. */
    private Map<String, List<Map<String, String>>> leads() {
        List<Map<String, String>> cells = shown.of(tables.landing()).byKey();
        Map<String, List<Map<String, String>>> leads = new HashMap<>();
        for (int i = 0; i < cells.size(); i++) {
            PlannedCircuit lead = tables.landing().rows().get(i);
            Map<String, String> row = new HashMap<>(cells.get(i));
            row.put("rating", lead.breaker());
            leads.computeIfAbsent(lead.board().orElse(""), any -> new ArrayList<>())
                    .add(row);
        }
        return leads;
    }

    PrintSection commissioning() {
        Map<String, Map<String, String>> nodes = new HashMap<>();
        shown.of(tables.tests()).byKey(PanelTest::panel).forEach((panel, rows) -> nodes.put(panel, rows.get(0)));
        List<Map<String, String>> residual =
                tables.residual().map(table -> shown.of(table).byKey()).orElse(List.of());
        return PrintSections.section(
                "Commissioning sheet",
                "commissioning",
                PrintBlock.parts(
                        PrintBlock.of(shown.of(tables.commissioning()), PlannedCircuit::panel), PrintSections.ROWS),
                part -> Map.of(
                        "note",
                        tables.commissioning().note() + " " + tables.tests().note(),
                        "groups",
                        shown.of(tables.groups()).byKey(),
                        "residual",
                        residual,
                        "residualNote",
                        tables.residual().map(table -> table.note()).orElse(""),
                        "panels",
                        part.stream()
                                .map(each -> new Commissioned(
                                        each.name(), nodes.getOrDefault(each.of(), Map.of()), each.rows()))
                                .toList()));
    }

    PrintSection labels() {
        List<List<Map<String, String>>> lines =
                PrintSections.chunks(shown.of(tables.labels()).byKey(), LABELS_ABREAST);
        return PrintSections.section(
                "Labels for the breakers", "labels", PrintSections.parts(lines), part -> Map.of("lines", part));
    }
}
