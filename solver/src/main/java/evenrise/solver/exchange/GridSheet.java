package evenrise.solver.exchange;

import evenrise.model.file.FieldColumn;
import evenrise.model.file.ProjectTree;
import java.util.List;
import java.util.Optional;

/**
 * One of a project's lists as rows of texts, for a screen on which it is edited.
 *
 * @param columns those that are shown: of nested objects such as some entry states
 * @param rows a text for each column, the first the id; empty where nothing is stated
 * @param further columns that there may be, too
 */
public record GridSheet(String list, List<FieldColumn> columns, List<List<String>> rows, List<FieldColumn> further) {
    /** @param list one of {@link FieldColumn#LISTS} or {@link FieldColumn#FURTHER} */
    public static GridSheet of(ProjectTree project, String list) {
        ListSheet sheet = ListSheet.of(project, list);
        return new GridSheet(
                list,
                sheet.columns(),
                sheet.rows().stream()
                        .map(row -> row.stream().map(GridSheet::text).toList())
                        .toList(),
                FieldColumn.of(list).stream()
                        .filter(each -> !sheet.columns().contains(each))
                        .toList());
    }

    private static String text(Object cell) {
        return cell instanceof Double number ? CellSpelling.text(Optional.of(number)) : cell.toString();
    }
}
