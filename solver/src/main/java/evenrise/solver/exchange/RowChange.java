package evenrise.solver.exchange;

import java.util.List;

/**
 * What is another in one row of a table than in the project.
 *
 * @param list that the entry is of
 * @param row of the table, from 1; 0 for what is not in the table any more
 * @param fields what is another, each as {@code key old → new}; of a new entry what it states
 */
public record RowChange(Kind kind, String list, int row, String id, List<String> fields) {
    public enum Kind {
        ADDED,
        CHANGED,
        REMOVED
    }

    public RowChange {
        fields = List.copyOf(fields);
    }

    /** In one line. */
    public String text() {
        String at = list + (row > 0 ? ", row " + row : "") + ": ";
        String what = String.join("; ", fields);
        return at
                + switch (kind) {
                    case ADDED -> "'" + id + "' is new: " + what;
                    case CHANGED -> "'" + id + "': " + what;
                    case REMOVED -> "'" + id + "' is taken out" + (what.isEmpty() ? "" : ", and with it " + what);
                };
    }
}
