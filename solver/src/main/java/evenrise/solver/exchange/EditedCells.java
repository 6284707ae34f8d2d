package evenrise.solver.exchange;

import evenrise.model.check.Severity;
import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.project.Project;
import evenrise.solver.table.Cell;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Single cells of a list edited by hand, entries added or taken out: all of it, or nothing where anything contradicts. */
public final class EditedCells {
    /** A cell and what stands in it now; an empty text states nothing. */
    public record Edit(String id, String column, String text) {}

    /** What is wrong: the cell where it is in one of the list, else only words. */
    public record Misfit(Optional<String> id, Optional<String> column, String message) {}

    private final String list;
    private final ProjectTree tree;
    private final List<Misfit> misfits = new ArrayList<>();
    private final Map<String, FieldColumn> columns = new LinkedHashMap<>();
    private Optional<Reading<Project>> read = Optional.empty();

    private EditedCells(ProjectTree before, String list) {
        this.list = list;
        this.tree = before.copy();
        FieldColumn.of(list).forEach(each -> columns.put(each.path(), each));
        before.ownColumns(list).forEach(each -> columns.put(each.path(), each));
    }

    /**
     * @param list one of {@link FieldColumn#LISTS} or {@link FieldColumn#FURTHER}
     * @param removed ids of entries that are taken out
     * @param edits of entries; of ids that there are none of, entries are added
     */
    public static EditedCells of(ProjectTree project, String list, List<String> removed, List<Edit> edits) {
        EditedCells edited = new EditedCells(project, list);
        Set<String> ids = new LinkedHashSet<>(project.ids(list));
        removed.stream().distinct().filter(ids::contains).forEach(id -> edited.tree.remove(list, id));
        ids.removeAll(removed);
        for (Edit edit : edits) {
            if (!ids.contains(edit.id()) && !edited.isAdded(edit)) {
                continue;
            }
            ids.add(edit.id());
            edited.take(edit);
        }
        if (edited.misfits.isEmpty()) {
            edited.check();
        }
        return edited;
    }

    /** The project with the edits; empty where something is wrong. */
    public Optional<Reading<Project>> read() {
        return read;
    }

    /** What is wrong; empty where all is taken in. */
    public List<Misfit> misfits() {
        return List.copyOf(misfits);
    }

    private boolean isAdded(Edit edit) {
        try {
            tree.add(list, edit.id());
            return true;
        } catch (IllegalArgumentException e) {
            misfits.add(new Misfit(
                    Optional.of(edit.id()),
                    Optional.of(FieldColumn.ID),
                    "'" + Harmless.named(edit.id()) + "' is no row yet, expected " + e.getMessage() + "."));
            return false;
        }
    }

    private void take(Edit edit) {
        FieldColumn column = Optional.ofNullable(columns.get(edit.column()))
                .or(() -> FieldColumn.own(edit.column()))
                .orElse(null);
        if (column == null || column.path().equals(FieldColumn.ID)) {
            misfits.add(new Misfit(
                    Optional.of(edit.id()),
                    Optional.of(edit.column()),
                    "'" + Harmless.named(edit.column()) + "' is no column that can be edited here."));
            return;
        }
        try {
            Cell cell = Cell.text(edit.text());
            tree.state(
                    list,
                    edit.id(),
                    column,
                    CellSpelling.value(cell, column, tree.value(list, edit.id(), column), showsComma(edit.text())));
        } catch (IllegalArgumentException e) {
            misfits.add(new Misfit(
                    Optional.of(edit.id()),
                    Optional.of(edit.column()),
                    column.path() + " of '" + Harmless.named(edit.id()) + "' is '"
                            + Harmless.named(Harmless.cut(edit.text(), 80)) + "', expected " + e.getMessage() + "."));
        }
    }

    /** A single cell has no neighbours to tell by: a comma between digits is a decimal mark. */
    private static boolean showsComma(String text) {
        return text.matches("\\s*-?[0-9]+,[0-9]+\\s*");
    }

    private void check() {
        Reading<Project> reading = tree.read("the project");
        reading.problems().stream()
                .filter(each -> each.severity() == Severity.ERROR)
                .map(this::placed)
                .forEach(misfits::add);
        if (reading.value().isPresent()) {
            read = Optional.of(reading);
        }
    }

    private Misfit placed(Problem problem) {
        String words = problem.subject() + " is " + problem.value() + ", expected " + problem.expected() + "."
                + (problem.cure().isEmpty() ? "" : " " + problem.cure());
        Optional<Map.Entry<String, List<String>>> place = tree.place(list, problem.pointer());
        if (place.isEmpty()) {
            return new Misfit(Optional.empty(), Optional.empty(), words);
        }
        List<String> keys = place.get().getValue();
        Optional<String> column = Optional.empty();
        for (int end = keys.size(); end > 0 && column.isEmpty(); end--) {
            column = Optional.of(String.join(".", keys.subList(0, end))).filter(columns::containsKey);
        }
        return new Misfit(Optional.of(place.get().getKey()), column, words);
    }
}
