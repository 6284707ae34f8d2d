package evenrise.solver.intake;

import evenrise.model.intake.Mapping;
import evenrise.model.intake.SheetMapping;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a mapping says of sheets, columns and rooms that a list does not have. */
final class MappingInVain {
    private MappingInVain() {}

    /** @param rooms of the list, in plain words */
    static List<Notice> of(List<ReadTable> sheets, List<ReadList> lists, Set<String> rooms, Mapping mapping) {
        List<Notice> found = new ArrayList<>();
        Stream.concat(
                        mapping.sheets().isEmpty() ? mapping.sheet().stream() : Stream.empty(),
                        mapping.sheets().stream().map(SheetMapping::sheet))
                .filter(name -> sheets.stream().noneMatch(sheet -> sheet.name().equals(name)))
                .forEach(name -> found.add(Notice.problem("the mapping reads sheet '" + CellReader.cut(name)
                        + "', which is not there. The sheets are: "
                        + sheets.stream().map(sheet -> "'" + sheet.name() + "'").collect(Collectors.joining(", "))
                        + ".")));
        Stream.concat(
                        mapping.sheets().isEmpty() ? mapping.ignore().stream() : Stream.empty(),
                        mapping.sheets().stream().flatMap(sheet -> sheet.ignore().stream()))
                .filter(name -> lists.stream()
                        .flatMap(list -> list.header().read().stream())
                        .noneMatch(column -> column.by() == ReadColumn.By.IGNORED
                                && column.header().equalsIgnoreCase(name.strip())))
                .forEach(name -> found.add(Notice.guess(
                        "a column '" + CellReader.cut(name) + "' is to be ignored, and none has that header")));
        mapping.panelsOfRooms().stream()
                .filter(each -> !rooms.contains(HeaderWords.words(each.room())))
                .forEach(each -> found.add(Notice.guess("the mapping feeds room '" + CellReader.cut(each.room())
                        + "' from panel '" + CellReader.cut(each.panel()) + "', and the list has no such room")));
        return found;
    }
}
