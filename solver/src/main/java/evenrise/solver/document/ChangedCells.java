package evenrise.solver.document;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Holds two states of a plan beside each other, cell by cell: loads, boards, heads of panels. */
final class ChangedCells {
    /** As many as any sheet shows. */
    private static final int DECIMALS = 3;

    /** A cell with the heading of its column. */
    private record Cell(String heading, Object value) {}

    private final PlanState before;
    private final PlanState now;
    private final List<ChangedCell> cells = new ArrayList<>();

    private ChangedCells(PlanState before, PlanState now) {
        this.before = before;
        this.now = now;
    }

    static List<ChangedCell> of(PlanState before, PlanState now) {
        ChangedCells found = new ChangedCells(before, now);
        found.compare(ChangedCell.LOAD, loads(before), loads(now));
        found.compare(ChangedCell.BOARD, boards(before), boards(now));
        found.compare(ChangedCell.PANEL, panels(before), panels(now));
        return found.cells;
    }

    static DocumentTable<ChangedCell> table(List<ChangedCell> cells, PlanState now) {
        return new DocumentTable<>(
                "differences",
                "What changed, cell by cell",
                "Only what is another than in the earlier plan. A load that is new or gone has one row.",
                List.of(
                        Column.text("panel", "Panel", ChangedCell::panel),
                        Column.text("what", "Kind", ChangedCell::what),
                        Column.text("which", "Load, board or panel", ChangedCell::id),
                        Column.text("name", "Name", ChangedCell::name),
                        Column.text("cell", "Changed", ChangedCell::cell),
                        Column.value("before", "Before", ChangedCell::before),
                        Column.value("now", "Now", ChangedCell::now)),
                cells,
                row -> now.layout()
                        .placement(row.id())
                        .filter(any -> row.isOf(ChangedCell.LOAD))
                        .map(placement -> placement.id()));
    }

    private static Map<String, Map<String, Cell>> loads(PlanState state) {
        Map<String, Map<String, Cell>> rows = new LinkedHashMap<>();
        addRows(rows, state.tables().circuits(), PlannedCircuit::load);
        addRows(rows, state.tables().landing(), PlannedCircuit::load);
        return rows;
    }

    private static Map<String, Map<String, Cell>> boards(PlanState state) {
        Map<String, Map<String, Cell>> rows = new LinkedHashMap<>();
        addRows(rows, state.tables().settings(), use -> use.board());
        return rows;
    }

    private static Map<String, Map<String, Cell>> panels(PlanState state) {
        Map<String, Map<String, Cell>> rows = new LinkedHashMap<>();
        for (Schedule schedule : state.schedules()) {
            Map<String, Cell> cells = new LinkedHashMap<>();
            schedule.head()
                    .forEach(fact ->
                            cells.put(fact.name(), new Cell(fact.name(), (fact.value() + " " + fact.note()).strip())));
            rows.put(schedule.panel(), cells);
        }
        return rows;
    }

    private static <R> void addRows(
            Map<String, Map<String, Cell>> rows, DocumentTable<R> table, Function<R, String> id) {
        for (R row : table.rows()) {
            Map<String, Cell> cells = rows.computeIfAbsent(id.apply(row), any -> new LinkedHashMap<>());
            table.columns()
                    .forEach(column -> cells.put(column.key(), new Cell(column.heading(), shown(column.of(row)))));
        }
    }

    /** What differs by less than is shown anywhere does not differ. */
    static Object shown(Object value) {
        if (!(value instanceof Double number) || !Double.isFinite(number)) {
            return value;
        }
        BigDecimal rounded = BigDecimal.valueOf(number)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    }

    private void compare(String what, Map<String, Map<String, Cell>> had, Map<String, Map<String, Cell>> has) {
        Set<String> ids = new LinkedHashSet<>(has.keySet());
        ids.addAll(had.keySet());
        for (String id : ids) {
            if (!had.containsKey(id)) {
                add(what, id, new Cell("In the plan", "no"), place(what, has.get(id)));
            } else if (!has.containsKey(id)) {
                add(what, id, new Cell("In the plan", place(what, had.get(id))), "no");
            } else {
                compare(what, id, had.get(id), has.get(id));
            }
        }
    }

    private void compare(String what, String id, Map<String, Cell> had, Map<String, Cell> has) {
        Set<String> keys = new LinkedHashSet<>(has.keySet());
        keys.addAll(had.keySet());
        for (String key : keys) {
            Cell was = had.getOrDefault(key, new Cell("", ""));
            Cell is = has.getOrDefault(key, new Cell(was.heading(), ""));
            if (!was.value().equals(is.value())) {
                cells.add(row(what, id, key, is.heading(), was.value(), is.value()));
            }
        }
    }

    private static String place(String what, Map<String, Cell> cells) {
        return what.equals(ChangedCell.LOAD)
                ? "panel " + cells.get("panel").value() + ", slots "
                        + cells.get("slots").value()
                : "yes";
    }

    private void add(String what, String id, Cell was, Object is) {
        cells.add(row(what, id, ChangedCell.IN_THE_PLAN, was.heading(), was.value(), is));
    }

    private ChangedCell row(String what, String id, String key, String heading, Object was, Object is) {
        return new ChangedCell(what, id, name(what, id), panel(what, id), key, heading, was, is);
    }

    private String name(String what, String id) {
        return what.equals(ChangedCell.LOAD)
                ? now.layout()
                        .index()
                        .load(id)
                        .or(() -> before.layout().index().load(id))
                        .map(load -> load.name())
                        .orElse("")
                : "";
    }

    private String panel(String what, String id) {
        return switch (what) {
            case ChangedCell.LOAD -> panelOf(now, id).isEmpty() ? panelOf(before, id) : panelOf(now, id);
            case ChangedCell.BOARD -> boardPanel(now, id).isEmpty() ? boardPanel(before, id) : boardPanel(now, id);
            default -> id;
        };
    }

    private static String panelOf(PlanState state, String load) {
        return state.layout()
                .placement(load)
                .map(each -> each.assignment().panel())
                .orElse("");
    }

    private static String boardPanel(PlanState state, String board) {
        return state.layout().index().board(board).map(each -> each.panel()).orElse("");
    }
}
