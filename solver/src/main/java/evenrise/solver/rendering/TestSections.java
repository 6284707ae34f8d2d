package evenrise.solver.rendering;

import evenrise.model.project.OnEmergency;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.PanelTest;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.document.ResidualTest;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.document.SwitchingWords;
import evenrise.solver.report.GroupUse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What is tried and measured before the plant is handed over. */
final class TestSections {
    /** A panel's breakers with what the whole panel is planned to draw; the node is empty where there is no such panel. */
    public record Commissioned(
            String name, String breakers, Map<String, String> node, List<Map<String, String>> rows) {}

    private final SiteDocument site;
    private final Document document;
    private final SheetWords words;
    private final SwitchingWords switching;
    private final DocumentTables tables;
    private final ShownTables shown;

    TestSections(SiteDocument site, ShownTables shown) {
        this.site = site;
        this.document = site.document();
        this.words = site.words();
        this.switching = new SwitchingWords(words);
        this.tables = document.tables();
        this.shown = shown;
    }

    PrintSection commissioning() {
        Map<String, Object> head = Map.of(
                "note",
                words.say("test.note")
                        + (document.systems().isEmpty() ? "" : " " + words.say("test.systems"))
                        + " " + words.say("test.panels") + " "
                        + words.say("test.tolerance", words.number(String.valueOf(document.toleranceSeconds()))),
                "groups",
                tables.groups().rows().stream().map(this::group).toList(),
                "residual",
                residual());
        return PrintSections.section(
                words.say("test.title"),
                "commissioning",
                PrintBlock.parts(panels(), each -> each.rows().size(), PrintSections.ROWS),
                part -> {
                    Map<String, Object> values = new HashMap<>(head);
                    values.put("panels", part);
                    return values;
                });
    }

    Optional<PrintSection> motors() {
        return tables.motors().map(table -> {
            List<Map<String, String>> rows = new ArrayList<>();
            List<Map<String, String>> cells = shown.of(table).byKey();
            for (int i = 0; i < cells.size(); i++) {
                Map<String, String> row = new TreeMap<>(cells.get(i));
                row.put("control", Cells.text(switching.control(table.rows().get(i))));
                rows.add(row);
            }
            List<PrintSections.PrintColumn> columns = List.of(
                    column("load", "test.load", 0),
                    column("name", "motors.name", 0),
                    column("place", "motors.place", 24),
                    column("control", "test.control", 0),
                    column("offAfterMains", "motors.off-after-mains", 18),
                    column("offAfterRelease", "motors.off-after-release", 18),
                    column("startsWhenAsked", "motors.starts", 18),
                    column("initials", "test.initials", 0));
            String title = words.say("motors.title");
            return PrintSections.section(
                    title,
                    "findings",
                    PrintSections.parts(rows),
                    part -> Map.of("title", title, "note", site.motorsNote(), "columns", columns, "rows", part));
        });
    }

    private PrintSections.PrintColumn column(String key, String heading, int millimetres) {
        return new PrintSections.PrintColumn(key, words.say(heading), false, millimetres);
    }

    private Map<String, String> group(GroupUse group) {
        return Map.of(
                "group",
                Cells.text(group.group()),
                "effect",
                words.say(group.onEmergency() == OnEmergency.DROP ? "test.drops" : "test.holds"),
                "loads",
                String.valueOf(group.loads()));
    }

    private List<Map<String, String>> residual() {
        List<Map<String, String>> rows = new ArrayList<>();
        tables.residual().ifPresent(table -> {
            List<Map<String, String>> cells = shown.of(table).byKey();
            for (int i = 0; i < cells.size(); i++) {
                ResidualTest device = table.rows().get(i);
                Map<String, String> row = new TreeMap<>(cells.get(i));
                row.put("rated", words.number(row.get("rated")));
                row.put("most", words.number(row.get("most")));
                if (device.place().equals(device.panel())) {
                    row.put("protects", Cells.text(words.say("panel.word", device.panel())));
                }
                rows.add(row);
            }
        });
        return rows;
    }

    private List<Commissioned> panels() {
        Map<String, Map<String, String>> nodes = new HashMap<>();
        List<Map<String, String>> tests = shown.of(tables.tests()).byKey();
        for (int i = 0; i < tests.size(); i++) {
            nodes.put(
                    tables.tests().rows().get(i).panel(),
                    node(tables.tests().rows().get(i), tests.get(i)));
        }
        List<Map<String, String>> cells = shown.of(tables.commissioning()).byKey();
        Map<String, List<Map<String, String>>> rows = new LinkedHashMap<>();
        for (int i = 0; i < cells.size(); i++) {
            PlannedCircuit circuit = tables.commissioning().rows().get(i);
            rows.computeIfAbsent(circuit.panel(), any -> new ArrayList<>()).add(row(circuit, cells.get(i)));
        }
        List<Commissioned> panels = new ArrayList<>();
        rows.forEach((panel, breakers) -> panels.add(new Commissioned(
                words.say("panel.title", Cells.text(panel)),
                words.say("test.breakers", Cells.text(panel)),
                nodes.getOrDefault(panel, Map.of()),
                breakers)));
        return panels;
    }

    private Map<String, String> node(PanelTest test, Map<String, String> cells) {
        Map<String, String> node = new TreeMap<>();
        cells.forEach((key, cell) -> node.put(key, words.number(cell)));
        node.put("voltage", words.voltage(test.voltage()));
        node.put("neutrals", words.say("test.neutral-planned", node.get("neutral"), node.get("neutralWorst")));
        return node;
    }

    private Map<String, String> row(PlannedCircuit circuit, Map<String, String> cells) {
        Map<String, String> row = new TreeMap<>(cells);
        for (String figure : List.of("idle", "running", "off")) {
            row.put(figure, words.number(cells.get(figure)));
        }
        row.put(
                "on",
                circuit.onSeconds().isPresent()
                        ? words.number(cells.get("on"))
                        : words.say(circuit.isSwitched() ? "slot.not-assigned" : "slot.always"));
        row.put(
                "control",
                Cells.text(switching.control(circuit))
                        + (circuit.turns() ? "; " + words.say("test.rotation-first") : ""));
        return row;
    }
}
