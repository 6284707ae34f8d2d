package evenrise.solver.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How the texts of a list's columns were read, each way once with its number of rows. */
final class ReadValues {
    private record Way(Meaning meaning, String written, String name, String reads, ReadValue.How how) {}

    /** Rows are read one after another, so that the last one tells whether a row was counted. */
    private record Rows(int count, String last) {}

    private final Map<Way, Rows> ways = new LinkedHashMap<>();

    void add(String place, Meaning meaning, String written, String name, String reads, ReadValue.How how) {
        ways.merge(
                new Way(meaning, written, name, reads, how),
                new Rows(1, place),
                (rows, one) -> rows.last().equals(place) ? rows : new Rows(rows.count() + 1, place));
    }

    /** Column by column, each in the list's order. */
    List<ReadValue> all() {
        List<ReadValue> all = new ArrayList<>();
        for (Meaning meaning : Meaning.values()) {
            ways.forEach((way, rows) -> {
                if (way.meaning() == meaning) {
                    all.add(new ReadValue(
                            meaning.key(), way.written(), way.name(), way.reads(), way.how(), rows.count()));
                }
            });
        }
        return all;
    }
}
