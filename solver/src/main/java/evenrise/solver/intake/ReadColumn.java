package evenrise.solver.intake;

import java.util.Optional;

/**
 * How one column of a list was read.
 *
 * @param sheet empty for a text file
 * @param letters of the column, A for the first
 * @param means a field's name of a mapping's columns; empty where it was not read
 * @param unit that its header states; empty where it states none
 * @param by what told
 */
public record ReadColumn(String sheet, String letters, String header, Optional<String> means, String unit, By by) {
    /** What told how a column is read. */
    public enum By {
        /** A mapping. */
        MAPPING,
        /** Words of its header. */
        HEADER,
        /** Its values, as its header may mean several things. */
        VALUES,
        /** Nothing, so that it was not read. */
        NOTHING,
        /** A mapping or an option that says to ignore it. */
        IGNORED
    }
}
