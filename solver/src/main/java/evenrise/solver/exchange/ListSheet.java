package evenrise.solver.exchange;

import evenrise.model.file.FieldColumn;
import evenrise.model.file.ProjectTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * One of a project's lists as a table: a header of the fields' keys, a row of units, a row for each entry. Fields of
 * nested objects have columns where some entry states them, keys of one's own where they hold one value.
 *
 * @param name of the list
 */
record ListSheet(String name, List<FieldColumn> columns, List<List<Object>> rows) {
    /** Stands as the id of the row that says units. */
    static final String UNITS = "(unit)";

    private static final Set<String> ALWAYS = Set.of("loads", "panels", "boards", "shutdown_groups");

    private static final Map<String, String> SIGNS = Map.of(
            "a", "A", "v", "V", "hz", "Hz", "pct", "%", "ohm", "Ω", "w", "W", "c", "°C", "deg", "°", "kva", "kVA");

    /** Lists that the project has, or may want. */
    static List<ListSheet> of(ProjectTree project) {
        return FieldColumn.LISTS.stream()
                .filter(list -> !project.ids(list).isEmpty() || ALWAYS.contains(list))
                .map(list -> of(project, list))
                .toList();
    }

    static ListSheet of(ProjectTree project, String list) {
        List<String> ids = project.ids(list);
        List<FieldColumn> columns = Stream.concat(
                        FieldColumn.of(list).stream()
                                .filter(column -> !column.isNested()
                                        || ids.stream()
                                                .anyMatch(id -> project.value(list, id, column)
                                                        .isPresent())),
                        project.ownColumns(list).stream())
                .toList();
        List<List<Object>> rows = new ArrayList<>();
        for (String id : ids) {
            rows.add(columns.stream()
                    .map(column -> CellSpelling.cell(project.value(list, id, column)))
                    .toList());
        }
        return new ListSheet(list, columns, rows);
    }

    List<String> header() {
        return columns.stream().map(FieldColumn::path).toList();
    }

    /** What each column takes, in a word or two. */
    List<String> units() {
        return columns.stream()
                .map(column -> column.path().equals(FieldColumn.ID) ? UNITS : unit(column))
                .toList();
    }

    private static String unit(FieldColumn column) {
        String unit = column.unit()
                .map(symbol -> SIGNS.getOrDefault(symbol, symbol))
                .orElse(
                        switch (column.kind()) {
                            case NUMBER -> "number";
                            case TRUTH -> "true or false";
                            case TEXTS -> "by commas";
                            case NUMBERS -> "numbers, by commas";
                            case FREE -> "yours";
                            case TEXT -> column.expected().replaceFirst("^(one of: |a )", "");
                        });
        String otherwise = column.byDefault().isEmpty() || column.byDefault().equals("[]")
                ? ""
                : "; " + column.byDefault() + " where empty";
        String needed = column.isNested() ? "; needed in " + column.path().replaceFirst("\\.[^.]*$", "") : "; needed";
        return unit + (column.isRequired() ? needed : otherwise);
    }
}
