package evenrise.solver.rendering;

import evenrise.solver.document.DistributionRow;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.DocumentTables;
import evenrise.solver.document.Margin;
import evenrise.solver.document.NodeCurves;
import evenrise.solver.document.PeakPart;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.drawing.Sheet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What is printed behind the cover, in the order in which a job goes: judge, build, wire, set, try, label. */
final class PrintSections {
    /** Rows that are laid out at once. */
    static final int ROWS = 1200;

    /** Broken rules of which the cover has all. */
    private static final int ON_THE_COVER = 6;

    /** Columns of remarks that are not printed: figures stand in the sentences, clauses behind them. */
    private static final Set<String> IN_REMARKS = Set.of("clause", "figure", "limit", "unit");

    /** Nodes that are laid out at once. */
    private static final int NODES = 60;

    private static final int SUPPLY_MILLIMETRES = 156;
    private static final int PANEL_MILLIMETRES = 100;
    private static final int LANE_MILLIMETRES = 14;
    private static final int LEAST_LOAD_MILLIMETRES = 24;
    private static final int MOST_LOAD_MILLIMETRES = 45;

    /** A column of a table that fills the page. */
    public record PrintColumn(String key, String header, boolean isNumber, int millimetres) {}

    /** A row of the sequence, and how far into it the load comes on. */
    public record Step(Map<String, String> cells, String percent) {}

    private final Document document;
    private final SiteDocument site;
    private final DocumentTables tables;
    private final ShownTables shown;

    private PrintSections(SiteDocument site, ShownTables shown) {
        this.document = site.document();
        this.site = site;
        this.tables = document.tables();
        this.shown = shown;
    }

    /** A column that keeps most ids of loads in one line: a letter's width each, and the edges. */
    static int loadMillimetres(Document document) {
        int longest = document.loads().stream()
                .mapToInt(load -> load.id().length())
                .max()
                .orElse(0);
        return Math.max(LEAST_LOAD_MILLIMETRES, Math.min(MOST_LOAD_MILLIMETRES, 3 + 3 * longest / 2));
    }

    /** Those of the sections that are wanted and that the document has something for, in their order. */
    static Map<SheetSection, PrintSection> of(SiteDocument site, ShownTables shown, Collection<SheetSection> wanted) {
        PrintSections of = new PrintSections(site, shown);
        Map<SheetSection, PrintSection> all = new EnumMap<>(SheetSection.class);
        wanted.forEach(each -> of.section(each).ifPresent(section -> all.put(each, section)));
        return all;
    }

    private Optional<PrintSection> section(SheetSection which) {
        return switch (which) {
            case RULES ->
                tables.rules()
                        .filter(any -> document.findings().size() > ON_THE_COVER)
                        .map(table -> table(table, Map.of("rule", 30)));
            case BEFORE -> BeforeAfter.section(document, shown);
            case CHANGES ->
                tables.changes()
                        .map(changes ->
                                table(changes.cells(), Map.of("panel", 22, "what", 14, "which", 34, "name", 40)));
            case DISTRIBUTION -> distribution();
            case SEQUENCE -> Optional.of(sequence());
            case PHASES -> Optional.of(nodes());
            case TRANSFORMERS -> further();
            case UNSTATED -> tables.unstated().map(table -> table(table, Map.of("load", 30, "switched", 18)));
            case SCHEDULES -> Optional.of(new PanelSections(site, shown).schedules());
            case OVER_TIME -> Optional.of(overTime());
            case DRAWINGS -> Optional.of(drawings());
            case SETTINGS -> Optional.of(new BoardSections(site, shown).settings());
            case LANDING -> Optional.of(new BoardSections(site, shown).landing());
            case SHUTDOWN -> Optional.of(new EmergencySection(site, shown).section());
            case FINDINGS ->
                Optional.of(table(tables.review(), Map.of("grade", 27, "check", 27, "place", 24), IN_REMARKS, ""));
            case BILL ->
                Optional.of(table(
                        tables.bill(),
                        Map.of("quantity", 22, "price", 28, "sum", 28),
                        Set.of(),
                        tables.bill().note()));
            case COMMISSIONING -> Optional.of(new TestSections(site, shown).commissioning());
            case MOTORS -> new TestSections(site, shown).motors();
            case LABELS -> Optional.of(new PlateSections(site, shown).breakers());
            case MARGINS -> Optional.of(margins());
            case CHECKS -> Optional.of(checks());
            case DIRECTORY -> Optional.of(new PanelSections(site, shown).directory());
            case EQUIPMENT -> Optional.of(new PlateSections(site, shown).equipment());
        };
    }

    /** @param millimetres widths of columns; what remains is for the others */
    private PrintSection table(DocumentTable<?> table, Map<String, Integer> millimetres) {
        return table(table, millimetres, Set.of(), "");
    }

    /** @param without keys of columns that are left out */
    private <R> PrintSection table(
            DocumentTable<R> table, Map<String, Integer> millimetres, Set<String> without, String note) {
        List<PrintColumn> columns = table.columns().stream()
                .filter(each -> !without.contains(each.key()))
                .map(each -> new PrintColumn(
                        each.key(), each.header(), each.isNumber(), millimetres.getOrDefault(each.key(), 0)))
                .toList();
        return section(
                table.title(),
                "findings",
                parts(shown.of(table).byKey()),
                rows -> Map.of("title", table.title(), "note", note, "columns", columns, "rows", rows));
    }

    /** All of them, behind everything else: the cover has the tightest. */
    private PrintSection margins() {
        List<List<Map<String, String>>> rows = parts(shown.of(tables.margins()).byKey());
        List<List<Margin>> bars = parts(tables.margins().rows());
        return new PrintSection(
                "Margins",
                "margins",
                IntStream.range(0, rows.size())
                        .mapToObj(i -> new PrintSection.Part(
                                "", Map.of("table", tables.margins(), "rows", rows.get(i), "bars", bars.get(i))))
                        .toList());
    }

    /** Figures that something limits; page, workbook and tables have the others, too. */
    private PrintSection checks() {
        List<Map<String, String>> all = shown.of(tables.checks()).byKey();
        List<Integer> held = IntStream.range(0, all.size())
                .filter(i -> tables.checks().rows().get(i).limit().isPresent())
                .boxed()
                .toList();
        return section(
                "Electrical checks",
                "checks",
                parts(held),
                part -> Map.of(
                        "table",
                        tables.checks(),
                        "others",
                        all.size() - held.size(),
                        "rows",
                        part.stream().map(all::get).toList(),
                        "figures",
                        part.stream().map(tables.checks().rows()::get).toList()));
    }

    /** Command by command. */
    private PrintSection sequence() {
        List<Map<String, String>> cells = shown.of(tables.steps()).byKey();
        List<PrintSection.Part> all = new ArrayList<>();
        for (NodeCurves supply : document.curves(document.supply().node())) {
            double end = NodeChart.lastSeconds(supply);
            List<Step> steps = IntStream.range(0, cells.size())
                    .filter(i -> supply.system().isEmpty()
                            || tables.steps().rows().get(i).circuit().system().equals(supply.system()))
                    .mapToObj(i -> new Step(
                            cells.get(i),
                            String.format(
                                    Locale.ROOT,
                                    "%.2f",
                                    100 * tables.steps().rows().get(i).onSeconds() / end)))
                    .toList();
            boolean isFirst = true;
            for (List<Step> rows : parts(steps)) {
                Map<String, Object> values = new HashMap<>();
                values.put("rows", rows);
                values.put("first", isFirst);
                values.put("system", supply.system().orElse(""));
                values.put("chart", NodeChart.of(supply, SUPPLY_MILLIMETRES, 27));
                values.put(
                        "peak",
                        supply.equals(document.supply()) ? peaks().getOrDefault(supply.node(), List.of()) : List.of());
                values.put("peakNote", tables.peak().note());
                values.put("phases", supply.phases());
                values.put("end", String.format(Locale.ROOT, "%.1f", end));
                all.add(new PrintSection.Part(
                        isFirst
                                ? supply.system()
                                        .map(system -> "System " + system)
                                        .orElse("")
                                : "",
                        values));
                isFirst = false;
            }
        }
        return new PrintSection("Sequence", "steps", all);
    }

    /** What feeds what, drawn as a tree, then what one command each switches and what runs when; none in a plain house. */
    private Optional<PrintSection> distribution() {
        Map<String, Object> values = new HashMap<>();
        tables.distribution().ifPresent(table -> {
            values.put("note", table.note());
            values.put("tree", TreeLine.of(table.rows(), shown.of(table).byKey()));
        });
        List<ShownTable<?>> more = Stream.of(tables.systems(), tables.scenes())
                .flatMap(Optional::stream)
                .map(shown::of)
                .collect(Collectors.toList());
        values.put("hasTree", tables.distribution().isPresent());
        values.put("hasScenes", tables.scenes().isPresent());
        values.put("tables", more);
        return tables.distribution().isEmpty() && more.isEmpty()
                ? Optional.empty()
                : Optional.of(new PrintSection(
                        "Distribution, systems, scenes", "distribution", List.of(new PrintSection.Part("", values))));
    }

    /** Every further node: what it is, what it carries, its current over time. */
    private Optional<PrintSection> further() {
        Map<String, List<Map<String, String>>> peaks = peaks();
        List<Map<String, Object>> nodes = new ArrayList<>();
        tables.distribution().ifPresent(table -> {
            List<Map<String, String>> cells = shown.of(table).byKey();
            for (int i = 0; i < table.rows().size(); i++) {
                DistributionRow row = table.rows().get(i);
                if (!row.kind().equals("panel") && !row.kind().equals("supply")) {
                    String id = row.node().node();
                    nodes.add(Map.of(
                            "title",
                            capital(row.kind()) + " " + Cells.text(id),
                            "row",
                            cells.get(i),
                            "phases",
                            row.phaseNames(),
                            "charts",
                            charts(id),
                            "peak",
                            peaks.getOrDefault(id, List.of())));
                }
            }
        });
        return nodes.isEmpty()
                ? Optional.empty()
                : Optional.of(section(
                        "Transformers, sources and distribution points",
                        "further",
                        chunks(nodes, NODES),
                        part -> Map.of(
                                "nodes", part, "hasScenes", tables.scenes().isPresent())));
    }

    private List<NodeChart> charts(String node) {
        return document.curves(node).stream()
                .map(curves -> NodeChart.of(curves, PANEL_MILLIMETRES, LANE_MILLIMETRES))
                .toList();
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    /** What makes the peak of each node. */
    private Map<String, List<Map<String, String>>> peaks() {
        return shown.of(tables.peak()).byKey(PeakPart::node);
    }

    private PrintSection nodes() {
        List<ShownTable<?>> all = new ArrayList<>(
                List.of(shown.of(tables.balance()), shown.of(tables.range()), shown.of(tables.events())));
        tables.starts().ifPresent(table -> all.add(shown.of(table)));
        tables.percentiles().ifPresent(table -> all.add(shown.of(table)));
        return section("Phases, peaks of events", "nodes", List.of(all), part -> Map.of("tables", part));
    }

    private PrintSection drawings() {
        List<PrintSection.Part> parts = new ArrayList<>();
        for (DrawnDiagram drawn : DrawnDiagram.all(document)) {
            for (Sheet sheet : drawn.sheets()) {
                // Each is one page.
                String number = document.imprint().sheet(SheetSection.DRAWINGS.number(), parts.size() + 1);
                parts.add(new PrintSection.Part(
                        drawn.title(sheet),
                        Map.of("drawn", drawn, "sheet", sheet, "title", drawn.title(sheet), "number", number)));
            }
        }
        return new PrintSection("Drawings", "drawing", parts, PrintSection.Form.DRAWING);
    }

    private PrintSection overTime() {
        Map<String, List<Map<String, String>>> peaks = peaks();
        List<Map<String, Object>> panels = document.schedules().stream()
                .map(schedule -> Map.<String, Object>of(
                        "name",
                        schedule.panel(),
                        "chart",
                        charts(schedule.panel()).get(0),
                        "peak",
                        peaks.getOrDefault(schedule.panel(), List.of())))
                .toList();
        return section("Panels over time", "overtime", chunks(panels, NODES), part -> Map.of("panels", part));
    }

    static <T> PrintSection section(
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
    static <T> List<List<T>> parts(List<T> rows) {
        return rows.isEmpty() ? List.of(List.of()) : chunks(rows, ROWS);
    }

    static <T> List<List<T>> chunks(List<T> all, int size) {
        List<List<T>> chunks = new ArrayList<>();
        for (int i = 0; i < all.size(); i += size) {
            chunks.add(all.subList(i, Math.min(all.size(), i + size)));
        }
        return chunks;
    }
}
