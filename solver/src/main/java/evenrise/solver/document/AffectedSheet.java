package evenrise.solver.document;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * A sheet to hand out anew.
 *
 * @param part of it, as a panel; empty where it is one
 * @param rows of it that are another, new or gone
 */
public record AffectedSheet(String sheet, String part, int rows) {
    /** Compared part by part, or on other sheets. */
    private static final Set<String> BY_PART = Set.of("landing", "commissioning");

    static DocumentTable<AffectedSheet> table(PlanState before, PlanState now) {
        return DocumentTable.of(
                "affected",
                "Sheets to hand out anew",
                "Whatever is not named here says the same as before. Sheets of the page, of print and tables of values have"
                        + " these names.",
                List.of(
                        Column.text("sheet", "Sheet", AffectedSheet::sheet),
                        Column.text("part", "Part", AffectedSheet::part),
                        Column.count("rows", "Rows that changed", AffectedSheet::rows)),
                of(before, now));
    }

    private static List<AffectedSheet> of(PlanState before, PlanState now) {
        List<AffectedSheet> sheets = new ArrayList<>();
        add(sheets, "Panel schedule", "panel ", rows(before.schedules()), rows(now.schedules()));
        for (int i = 0; i < now.diagrams().size(); i++) {
            Diagram diagram = now.diagrams().get(i);
            add(
                    sheets,
                    diagram.title(),
                    "",
                    Map.of("", blocks(before.diagrams(), diagram.id())),
                    Map.of("", blocks(now.diagrams(), diagram.id())));
        }
        add(
                sheets,
                "Landing list",
                "board ",
                byPart(before.tables().landing(), AffectedSheet::board),
                byPart(now.tables().landing(), AffectedSheet::board));
        add(
                sheets,
                "Commissioning sheet",
                "panel ",
                byPart(before.tables().commissioning(), PlannedCircuit::panel),
                byPart(now.tables().commissioning(), PlannedCircuit::panel));
        Map<String, List<Object>> had = new HashMap<>();
        before.tables().all().forEach(table -> had.put(table.id(), values(table)));
        for (DocumentTable<?> table : now.tables().all()) {
            if (!BY_PART.contains(table.id())) {
                add(
                        sheets,
                        table.title().split(":", 2)[0],
                        "",
                        Map.of("", had.getOrDefault(table.id(), List.of())),
                        Map.of("", values(table)));
            }
        }
        return sheets;
    }

    private static String board(PlannedCircuit circuit) {
        return circuit.board().orElse("");
    }

    private static Map<String, List<Object>> rows(List<Schedule> schedules) {
        Map<String, List<Object>> rows = new LinkedHashMap<>();
        for (Schedule schedule : schedules) {
            List<Object> all = new ArrayList<>(schedule.head());
            all.addAll(schedule.rows());
            all.addAll(schedule.summary());
            all.addAll(schedule.totals());
            rows.put(schedule.panel(), all);
        }
        return rows;
    }

    private static List<Object> blocks(List<Diagram> diagrams, String id) {
        return diagrams.stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .<List<Object>>map(each -> new ArrayList<>(each.blocks()))
                .orElse(List.of());
    }

    private static <R> Map<String, List<Object>> byPart(DocumentTable<R> table, Function<R, String> part) {
        Map<String, List<Object>> rows = new LinkedHashMap<>();
        table.rows()
                .forEach(row -> rows.computeIfAbsent(part.apply(row), any -> new ArrayList<>())
                        .add(values(table, row)));
        return rows;
    }

    private static <R> List<Object> values(DocumentTable<R> table) {
        return table.rows().stream().<Object>map(row -> values(table, row)).toList();
    }

    private static <R> List<Object> values(DocumentTable<R> table, R row) {
        return table.columns().stream()
                .map(column -> ChangedCells.shown(column.of(row)))
                .toList();
    }

    private static void add(
            List<AffectedSheet> sheets,
            String sheet,
            String noun,
            Map<String, List<Object>> had,
            Map<String, List<Object>> has) {
        Map<String, List<Object>> all = new LinkedHashMap<>(has);
        had.forEach(all::putIfAbsent);
        for (String part : all.keySet()) {
            int rows = other(had.getOrDefault(part, List.of()), has.getOrDefault(part, List.of()));
            if (rows > 0) {
                sheets.add(new AffectedSheet(sheet, part.isEmpty() ? "" : noun + part, rows));
            }
        }
    }

    /** Rows of the one that the other does not have, whichever are more. */
    private static int other(List<Object> had, List<Object> has) {
        return Math.max(missing(had, has), missing(has, had));
    }

    private static int missing(List<Object> some, List<Object> among) {
        Map<Object, Integer> there = new HashMap<>();
        among.forEach(each -> there.merge(each, 1, Integer::sum));
        int missing = 0;
        for (Object each : some) {
            if (there.merge(each, -1, Integer::sum) < 0) {
                missing++;
            }
        }
        return missing;
    }
}
