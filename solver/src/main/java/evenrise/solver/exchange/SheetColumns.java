package evenrise.solver.exchange;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.solver.table.ReadTable;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Which columns of a table, read again, are which fields. */
final class SheetColumns {
    private final Map<FieldColumn, Integer> numbers = new LinkedHashMap<>();

    /** @param problem takes what is wrong with the header */
    SheetColumns(String list, ReadTable table, Consumer<String> problem) {
        Map<String, FieldColumn> known = FieldColumn.of(list).stream()
                .collect(Collectors.toMap(
                        FieldColumn::path, Function.identity(), (first, second) -> first, LinkedHashMap::new));
        ReadTable.Row header = table.rows().get(0);
        for (int i = 0; i < header.cells().size(); i++) {
            String text = header.cell(i).text();
            Optional<FieldColumn> column = Optional.ofNullable(known.get(text)).or(() -> FieldColumn.own(text));
            if (text.isEmpty()) {
                continue;
            }
            String at = list + ", row " + header.number() + ", column " + ReadTable.letters(i) + ": ";
            if (column.isEmpty()) {
                problem.accept(at + "'" + Harmless.named(text) + "' is no field of these. "
                        + Nearest.cure(text, known.keySet(), "Maybe begin a column of your own with x-."));
            } else if (numbers.putIfAbsent(column.get(), i) != null) {
                problem.accept(at + "'" + Harmless.named(text) + "' stands twice. Maybe take one out.");
            }
        }
        if (number(FieldColumn.ID).isEmpty()) {
            problem.accept(list + ", row " + header.number() + ": no column is called id, so that nobody can tell which"
                    + " row is which entry.");
        }
    }

    List<FieldColumn> all() {
        return List.copyOf(numbers.keySet());
    }

    /** Columns that hold numbers. */
    List<Integer> numbers() {
        return numbers.entrySet().stream()
                .filter(each -> each.getKey().kind() == FieldColumn.Kind.NUMBER)
                .map(Map.Entry::getValue)
                .toList();
    }

    int number(FieldColumn column) {
        return numbers.get(column);
    }

    /** Of the field with this path. */
    Optional<Integer> number(String path) {
        return numbers.entrySet().stream()
                .filter(each -> each.getKey().path().equals(path))
                .map(Map.Entry::getValue)
                .findFirst();
    }
}
