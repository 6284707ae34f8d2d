package evenrise.solver.intake;

import evenrise.model.contract.Words;
import evenrise.model.intake.CellReading;
import evenrise.model.intake.Columns;
import evenrise.model.intake.Mapping;
import evenrise.model.intake.SheetMapping;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A mapping that says in full how a list was read: every column, and every text that was guessed, asked about or could not be
 * read. Reading with it again gives the same project; a person corrects it and reads with it again.
 */
final class WholeMapping {
    private WholeMapping() {}

    static Mapping of(Mapping mapping, List<ReadList> lists, List<ReadValue> values) {
        Mapping whole = mapping.withReadings(readings(mapping, values));
        if (lists.isEmpty()) {
            return whole;
        }
        List<SheetMapping> sheets = lists.stream().map(WholeMapping::sheet).toList();
        if (sheets.size() > 1) {
            return whole.with()
                    .sheet(Optional.empty())
                    .headerRow(OptionalInt.empty())
                    .columns(Optional.empty())
                    .ignore(List.of())
                    .sheets(sheets)
                    .build();
        }
        SheetMapping only = sheets.get(0);
        return whole.with()
                .sheet(Optional.of(only.sheet()).filter(name -> !name.isEmpty()))
                .headerRow(only.headerRow())
                .columns(only.columns())
                .ignore(only.ignore())
                .sheets(List.of())
                .build();
    }

    private static SheetMapping sheet(ReadList list) {
        List<String> ignored = list.header().read().stream()
                .filter(column -> column.means().isEmpty())
                .map(ReadColumn::header)
                .distinct()
                .toList();
        Set<String> read = new HashSet<>();
        list.header().read().stream()
                .filter(column -> column.means().isPresent())
                .forEach(column -> read.add(column.header()));
        return SheetMapping.builder()
                .sheet(list.sheet())
                .headerRow(OptionalInt.of(list.header().row()))
                .columns(Optional.of(columns(list.header())))
                // Of two columns with one header, the second is not read as it is; it cannot be ignored by name.
                .ignore(ignored.stream()
                        .filter(header -> !read.contains(header))
                        .toList())
                .build();
    }

    private static Columns columns(Header header) {
        return Columns.of(component -> header.read().stream()
                .filter(column ->
                        column.means().filter(Words.key(component)::equals).isPresent())
                .map(ReadColumn::header)
                .findFirst());
    }

    private static List<CellReading> readings(Mapping mapping, List<ReadValue> values) {
        List<CellReading> readings = new ArrayList<>(mapping.readings());
        Set<List<String>> known = new HashSet<>();
        readings.forEach(each -> known.add(
                List.of(each.of(), each.name().orElse(""), each.written().strip())));
        for (ReadValue value : values) {
            if (value.how() != ReadValue.How.STATED && known.add(List.of(value.of(), value.name(), value.written()))) {
                readings.add(CellReading.builder()
                        .of(value.of())
                        .name(Optional.of(value.name()).filter(name -> !name.isEmpty()))
                        .written(value.written())
                        .reads(value.written())
                        .meant(Optional.of(value.reads()))
                        .build());
            }
        }
        return readings;
    }
}
