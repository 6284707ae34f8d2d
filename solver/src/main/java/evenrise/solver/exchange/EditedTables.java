package evenrise.solver.exchange;

import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.project.Project;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tables of a project that somebody has edited, held against it: what is another, and the project with that taken in. */
public final class EditedTables {
    private static final String GUESSED = "guessed";

    private final ProjectTree before;
    private final ProjectTree after;
    private final List<RowChange> changes = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private final Map<String, SheetColumns> columns = new LinkedHashMap<>();

    /** Row of each entry, by list and id. */
    private final Map<String, Map<String, Integer>> rows = new LinkedHashMap<>();

    private EditedTables(ProjectTree before) {
        this.before = before;
        this.after = before.copy();
    }

    /** @param tables by the names of the lists that they are of */
    public static EditedTables of(ProjectTree project, Map<String, ReadTable> tables) {
        EditedTables edited = new EditedTables(project);
        tables.forEach(edited::take);
        return edited;
    }

    /** Row by row, in the order of the tables. */
    public List<RowChange> changes() {
        return List.copyOf(changes);
    }

    /** What cannot be read, with its place; where there is any, what {@link #read} gives says nothing. */
    public List<String> problems() {
        return List.copyOf(problems);
    }

    /** The project with the changes. */
    public Reading<Project> read(String name) {
        return after.read(name);
    }

    /** A problem of the changed project, at its cell where it is in one. */
    public String placed(Problem problem) {
        String[] steps = problem.pointer().split("/");
        String list = steps.length > 2 ? steps[1] : "";
        if (!rows.containsKey(list) || !steps[2].matches("[0-9]+")) {
            return problem.message();
        }
        String id = after.ids(list).get(Integer.parseInt(steps[2]));
        Integer row = rows.get(list).get(id);
        if (row == null) {
            return problem.message();
        }
        Optional<Integer> column = Optional.empty();
        for (int end = steps.length; end > 3 && column.isEmpty(); end--) {
            column = columns.get(list).number(String.join(".", List.of(steps).subList(3, end)));
        }
        return list + ", row " + row
                + column.map(it -> ", column " + ReadTable.letters(it)).orElse("") + ": " + problem.subject() + " is "
                + problem.value() + ", expected " + problem.expected() + "."
                + (problem.cure().isEmpty() ? "" : " " + problem.cure());
    }

    private void take(String list, ReadTable table) {
        if (table.rows().isEmpty()) {
            problems.add(list + ": the table is empty. Maybe it was saved without its header.");
            return;
        }
        SheetColumns known = new SheetColumns(list, table, problems::add);
        Optional<Integer> ids = known.number(FieldColumn.ID);
        if (ids.isEmpty()) {
            return;
        }
        columns.put(list, known);
        Map<String, Integer> there = rows.computeIfAbsent(list, any -> new LinkedHashMap<>());
        Map<String, String> shown = new LinkedHashMap<>();
        before.ids(list)
                .forEach(id -> shown.put(CellSpelling.text(Optional.of(id)).strip(), id));
        boolean isCommaDecimal = table.hasDecimalComma(known.numbers());
        for (ReadTable.Row row : table.rows().subList(1, table.rows().size())) {
            String text = row.cell(ids.get()).text();
            if (text.equals(ListSheet.UNITS)) {
                continue;
            }
            if (text.isEmpty()) {
                problems.add(list + ", row " + row.number() + ": it has no id. Maybe give it one, or empty the row.");
                continue;
            }
            String id = shown.getOrDefault(text, text);
            if (there.putIfAbsent(id, row.number()) != null) {
                problems.add(list + ", row " + row.number() + ": '" + Harmless.named(id) + "' stands in row "
                        + there.get(id) + ", too. Maybe give one of them another id.");
                continue;
            }
            row(list, id, row, known, isCommaDecimal);
        }
        for (String id : before.ids(list)) {
            if (!there.containsKey(id)) {
                changes.add(new RowChange(
                        RowChange.Kind.REMOVED, list, 0, id, before.beside(list, id, FieldColumn.of(list))));
                after.remove(list, id);
            }
        }
    }

    private void row(String list, String id, ReadTable.Row row, SheetColumns known, boolean isCommaDecimal) {
        boolean isNew = !before.ids(list).contains(id);
        List<String> fields = new ArrayList<>();
        if (isNew) {
            after.add(list, id);
        }
        for (FieldColumn column : known.all()) {
            if (column.path().equals(FieldColumn.ID)) {
                continue;
            }
            Cell cell = row.cell(known.number(column));
            Optional<Object> had = isNew ? Optional.empty() : before.value(list, id, column);
            if (CellSpelling.says(cell, had, isCommaDecimal)) {
                continue;
            }
            try {
                Optional<Object> value = CellSpelling.value(cell, column, had, isCommaDecimal);
                after.state(list, id, column, value);
                fields.add(column.path() + " " + (isNew ? "" : said(had) + " → ") + said(value)
                        + (isGuessed(list, id, column) ? " (listed as guessed)" : ""));
            } catch (IllegalArgumentException e) {
                problems.add(list + ", row " + row.number() + ", column " + ReadTable.letters(known.number(column))
                        + ": " + column.path() + " of '" + Harmless.named(id) + "' is '"
                        + Harmless.named(Harmless.cut(cell.text(), 80)) + "', expected " + e.getMessage() + ".");
            }
        }
        if (isNew || !fields.isEmpty()) {
            changes.add(new RowChange(
                    isNew ? RowChange.Kind.ADDED : RowChange.Kind.CHANGED, list, row.number(), id, fields));
        }
    }

    /** Whether the entry says of the field that somebody guessed it; whoever knows better takes it out of the list. */
    private boolean isGuessed(String list, String id, FieldColumn column) {
        return FieldColumn.of(list).stream()
                .filter(each -> each.path().equals(GUESSED))
                .flatMap(each -> after.value(list, id, each).stream())
                .anyMatch(guessed -> ((List<?>) guessed).contains(column.path().replaceFirst("\\..*", "")));
    }

    private static String said(Optional<Object> value) {
        return value.isEmpty() ? "nothing" : CellSpelling.text(value);
    }
}
