package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Words;
import evenrise.model.file.FieldColumn;
import evenrise.model.file.ProjectTree;
import evenrise.solver.app.JobFailed;
import evenrise.solver.desk.DeskAnswers.ColumnView;
import evenrise.solver.desk.DeskAnswers.EditedView;
import evenrise.solver.desk.DeskAnswers.MisfitView;
import evenrise.solver.desk.DeskAnswers.TableView;
import evenrise.solver.exchange.EditedCells;
import evenrise.solver.exchange.GridSheet;
import java.util.List;
import java.util.stream.Stream;

/** The project's lists as tables, shown and edited. */
final class TableWork {
    /** Lists that are edited as tables. */
    static final List<String> LISTS = Stream.concat(FieldColumn.LISTS.stream(), FieldColumn.FURTHER.stream())
            .toList();

    private final Desk desk;

    TableWork(Desk desk) {
        this.desk = desk;
    }

    TableView table(String list) {
        JudgedState now = desk.judged();
        GridSheet sheet =
                GridSheet.of(ProjectTree.of(now.state().project(), now.state().notes()), list);
        return new TableView(
                desk.revision(),
                list,
                FieldColumn.isSingle(list),
                sheet.columns().stream().map(TableWork::view).toList(),
                sheet.rows(),
                sheet.further().stream().map(TableWork::view).toList());
    }

    private static ColumnView view(FieldColumn column) {
        return new ColumnView(
                column.path(),
                kind(column),
                column.isRequired(),
                column.unit().orElse(""),
                column.expected(),
                column.byDefault(),
                column.meaning());
    }

    private static String kind(FieldColumn column) {
        return Words.word(column.kind());
    }

    EditedView edit(DeskRequests.Cells asked) {
        if (!LISTS.contains(asked.list())) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "lists are " + String.join(", ", LISTS) + ".");
        }
        EditedCells edited = edited(asked, desk.judged());
        return new EditedView(
                edited.misfits().isEmpty(),
                desk.revision(),
                edited.misfits().stream()
                        .map(each -> new MisfitView(each.id(), each.column(), each.message()))
                        .toList());
    }

    /** What another hand, or this one's next click, changes while the cells are read is read again: the cells stand. */
    private EditedCells edited(DeskRequests.Cells asked, JudgedState read) {
        JudgedState now = read;
        while (true) {
            EditedCells edited = EditedCells.of(
                    ProjectTree.of(now.state().project(), now.state().notes()),
                    asked.list(),
                    asked.removed(),
                    asked.cells().stream()
                            .map(each -> new EditedCells.Edit(each.id(), each.column(), each.text()))
                            .toList());
            if (edited.read().isEmpty() || taken(asked, now, edited)) {
                return edited;
            }
            now = desk.judged();
        }
    }

    private boolean taken(DeskRequests.Cells asked, JudgedState seen, EditedCells edited) {
        var read = edited.read().orElseThrow();
        return desk.changeIf(
                seen.state(),
                words(asked),
                now -> now.state().under(read.value().orElseThrow(), read.notes()));
    }

    private static String words(DeskRequests.Cells asked) {
        int cells = asked.cells().size();
        if (cells == 1) {
            DeskRequests.OneCell only = asked.cells().get(0);
            return Harmless.shown(only.column() + " of " + only.id());
        }
        return asked.removed().isEmpty()
                ? cells + " cells of " + asked.list()
                : asked.removed().size() + " taken out of " + asked.list();
    }
}
