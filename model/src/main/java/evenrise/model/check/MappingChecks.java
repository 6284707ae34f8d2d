package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.contract.Words;
import evenrise.model.intake.CellReading;
import evenrise.model.intake.Columns;
import evenrise.model.intake.Mapping;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Finds what makes a mapping none of ours. */
public final class MappingChecks {
    private MappingChecks() {}

    /** The format is ours, and its kinds of board are whole and named apart. */
    public static List<Objection> errors(Mapping mapping) {
        if (!FormatVersion.isRead(mapping.format(), Mapping.FORMAT)) {
            return List.of(Identity.format(mapping.format(), Mapping.FORMAT));
        }
        List<Objection> found = new ArrayList<>();
        BoardTypeChecks.check(mapping.boardTypes(), any -> true, found::add);
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < mapping.boardTypes().size(); i++) {
            String id = mapping.boardTypes().get(i).id();
            if (!ids.add(id)) {
                found.add(Objection.error(
                        "/board_types/" + i + "/id", "'" + id + "' twice", "a name of its own for each", ""));
            }
        }
        columnsOf(mapping.readings(), found);
        return found;
    }

    /** A reading is about one of the columns that there are. */
    private static void columnsOf(List<CellReading> readings, List<Objection> found) {
        List<String> keys = Stream.of(Columns.class.getRecordComponents())
                .map(component -> Words.key(component.getName()))
                .toList();
        for (int i = 0; i < readings.size(); i++) {
            String of = readings.get(i).of();
            if (!keys.contains(of)) {
                found.add(Objection.error(
                        "/readings/" + i + "/of",
                        Shown.quoted(of),
                        "one of " + String.join(", ", keys),
                        Nearest.to(of, keys)
                                .map(near -> "Maybe it is '" + near + "'.")
                                .orElse("")));
            }
        }
    }
}
