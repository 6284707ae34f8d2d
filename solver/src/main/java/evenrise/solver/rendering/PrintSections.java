package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Grid;
import evenrise.solver.document.Schedule;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What is printed behind the cover, in the order in which a job goes: judge, build, wire, set, try, label. */
final class PrintSections {
    /** Rows that are laid out at once. */
    private static final int ROWS = 1200;

    /** Broken rules of which the cover has all. */
    private static final int ON_THE_COVER = 6;

    private static final int LABELS_ABREAST = 4;
    private static final int SUPPLY_MILLIMETRES = 156;
    private static final int PANEL_MILLIMETRES = 100;
    private static final int LANE_MILLIMETRES = 14;
    private static final int LEAST_LOAD_MILLIMETRES = 24;
    private static final int MOST_LOAD_MILLIMETRES = 45;

    /** A column of a table that fills the page. */
    public record Column(String name, String header, boolean isNumber, int millimetres) {}

    /** A row of the sequence, and how far into it the load comes on. */
    public record Step(Map<String, String> cells, String percent) {}

    /** A board's settings and the leads that land on it. */
    public record Landing(String name, Map<String, String> settings, List<Map<String, String>> rows) {}

    /** A panel's breakers with what the whole panel is planned to draw. */
    public record Commissioned(String name, Map<String, String> node, List<Map<String, String>> rows) {}

    private final Document document;
    private final Map<String, Grid> grids;

    private PrintSections(Document document) {
        this.document = document;
        this.grids = document.grids().stream().collect(Collectors.toMap(Grid::id, Function.identity()));
    }

    /** A column that keeps most ids of loads in one line: a letter's width each, and the edges. */
    static int loadMillimetres(Document document) {
        int longest = document.loads().stream()
                .mapToInt(load -> load.id().length())
                .max()
                .orElse(0);
        return Math.max(LEAST_LOAD_MILLIMETRES, Math.min(MOST_LOAD_MILLIMETRES, 3 + 3 * longest / 2));
    }

    static List<PrintSection> of(Document document) {
        PrintSections of = new PrintSections(document);
        List<PrintSection> all = new ArrayList<>();
        if (document.findings().size() > ON_THE_COVER) {
            of.table("rules", Map.of("Rule", 30)).ifPresent(all::add);
        }
        of.table("differences", Map.of("What", 16, "Which", 34, "Name", 40)).ifPresent(all::add);
        all.add(of.sequence());
        all.add(of.nodes());
        of.table("unstated", Map.of("Load", 30, "Switched", 18)).ifPresent(all::add);
        all.add(of.panels());
        all.add(of.landing());
        all.add(of.emergency());
        of.table("review", Map.of("Grade", 27, "Check", 27, "Place", 24)).ifPresent(all::add);
        of.table("bill", Map.of("Quantity", 22, "Price", 28, "Sum", 28)).ifPresent(all::add);
        all.add(of.commissioning());
        of.table("motors", Map.of("Place", 24, "Off after mains", 18, "Off after release", 18, "Starts when asked", 18))
                .ifPresent(all::add);
        all.add(of.labels());
        return all;
    }

    /**
     * A review's figures stand in its sentences, its clauses behind them.
     *
     * @param millimetres widths of columns; what remains is for the others
     */
    private Optional<PrintSection> table(String id, Map<String, Integer> millimetres) {
        return Optional.ofNullable(grids.get(id)).map(grid -> {
            List<Column> columns = grid.columns().stream()
                    .filter(each -> !id.equals("review")
                            || !List.of("Clause", "Figure", "Limit", "Unit").contains(each.name()))
                    .map(each -> new Column(
                            each.name(), each.header(), each.isNumber(), millimetres.getOrDefault(each.name(), 0)))
                    .toList();
            return section(
                    grid.title(),
                    "findings",
                    parts(PrintBlock.rows(grid)),
                    rows -> Map.of(
                            "title",
                            grid.title(),
                            "note",
                            id.equals("motors") ? grid.note() : "",
                            "columns",
                            columns,
                            "rows",
                            rows));
        });
    }

    private PrintSection sequence() {
        double end = NodeChart.lastSeconds(document.nodes().get(0));
        List<Map<String, String>> cells = PrintBlock.rows(grids.get("steps"));
        List<Step> steps = cells.stream()
                .map(row -> new Step(
                        row, String.format(Locale.ROOT, "%.2f", 100 * Double.parseDouble(row.get("On")) / end)))
                .toList();
        List<PrintBlock> peak = PrintBlock.of(grids.get("peak"));
        return section(
                "Sequence",
                "steps",
                parts(steps),
                rows -> Map.of(
                        "rows",
                        rows,
                        "chart",
                        NodeChart.of(document.nodes().get(0), document, SUPPLY_MILLIMETRES, 27),
                        "peak",
                        peak.isEmpty() ? List.of() : peak.get(0).rows(),
                        "peakNote",
                        grids.get("peak").note(),
                        "phases",
                        document.phaseNames().size(),
                        "end",
                        String.format(Locale.ROOT, "%.1f", end)));
    }

    private PrintSection nodes() {
        List<HtmlPage.Shown> shown = List.of("balance", "range", "events", "percentiles").stream()
                .filter(grids::containsKey)
                .map(id -> HtmlPage.shown(grids.get(id)))
                .toList();
        return section("Phases, peaks of events", "nodes", List.of(shown), part -> Map.of("grids", part));
    }

    private PrintSection panels() {
        Map<String, List<Map<String, String>>> peaks =
                PrintBlock.of(grids.get("peak")).stream().collect(Collectors.toMap(PrintBlock::name, PrintBlock::rows));
        List<PrintSection.Part> parts = new ArrayList<>();
        for (int i = 0; i < document.schedules().size(); i++) {
            Schedule schedule = document.schedules().get(i);
            parts.add(new PrintSection.Part(
                    "Panel " + schedule.panel(),
                    Map.of(
                            "schedule",
                            schedule,
                            "chart",
                            NodeChart.of(document.nodes().get(i + 1), document, PANEL_MILLIMETRES, LANE_MILLIMETRES),
                            "peak",
                            peaks.getOrDefault(schedule.panel(), List.of()))));
        }
        return new PrintSection("Panel schedules", "panels", parts);
    }

    private PrintSection landing() {
        Map<String, List<Map<String, String>>> rows = PrintBlock.of(grids.get("landing")).stream()
                .collect(Collectors.toMap(PrintBlock::name, PrintBlock::rows));
        List<Map<String, String>> settings = PrintBlock.rows(grids.get("settings"));
        Map<String, Map<String, String>> byBoard =
                settings.stream().collect(Collectors.toMap(each -> each.get("Board"), Function.identity()));
        List<PrintBlock> boards = settings.stream()
                .map(each -> new PrintBlock(each.get("Board"), rows.getOrDefault(each.get("Board"), List.of())))
                .toList();
        return section(
                "Boards: settings and landing list",
                "landing",
                PrintBlock.parts(boards, ROWS),
                part -> Map.of(
                        "note",
                        grids.get("landing").note(),
                        "boards",
                        part.stream()
                                .map(each -> new Landing(each.name(), byBoard.get(each.name()), each.rows()))
                                .toList()));
    }

    private PrintSection emergency() {
        return section(
                "Shutdown groups",
                "emergency",
                List.of(PrintBlock.of(grids.get("emergency"))),
                blocks -> Map.of("groups", PrintBlock.rows(grids.get("groups")), "loads", blocks));
    }

    private PrintSection commissioning() {
        Map<String, Map<String, String>> nodes = new HashMap<>();
        PrintBlock.rows(grids.get("balance")).forEach(row -> nodes.put(row.get("Node"), row));
        return section(
                "Commissioning sheet",
                "commissioning",
                PrintBlock.parts(PrintBlock.of(grids.get("commissioning")), ROWS),
                part -> Map.of(
                        "note",
                        grids.get("commissioning").note(),
                        "panels",
                        part.stream()
                                .map(each -> new Commissioned(
                                        each.name(), nodes.getOrDefault(each.name(), Map.of()), each.rows()))
                                .toList()));
    }

    private PrintSection labels() {
        List<List<Map<String, String>>> lines = chunks(PrintBlock.rows(grids.get("labels")), LABELS_ABREAST);
        return section("Labels for the breakers", "labels", parts(lines), part -> Map.of("lines", part));
    }

    private static <T> PrintSection section(
            String title, String template, List<T> parts, Function<T, Map<String, Object>> values) {
        List<PrintSection.Part> numbered = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Map<String, Object> all = new HashMap<>(values.apply(parts.get(i)));
            all.put("part", i + 1);
            numbered.add(new PrintSection.Part("", all));
        }
        return new PrintSection(title, template, numbered);
    }

    /** One empty part where there is nothing. */
    private static <T> List<List<T>> parts(List<T> rows) {
        return rows.isEmpty() ? List.of(List.of()) : chunks(rows, ROWS);
    }

    private static <T> List<List<T>> chunks(List<T> all, int size) {
        List<List<T>> chunks = new ArrayList<>();
        for (int i = 0; i < all.size(); i += size) {
            chunks.add(all.subList(i, Math.min(all.size(), i + size)));
        }
        return chunks;
    }
}
