package evenrise.model.file;

import evenrise.model.check.Severity;
import java.util.Set;

/**
 * One problem as it is gathered: its subject in words is found last.
 *
 * @param takers loads that the value came to from a default
 */
record DraftProblem(
        Severity severity,
        String pointer,
        int line,
        int column,
        String value,
        String expected,
        String cure,
        Set<String> takers) {
    /** What the same value is wrong by, whichever load it came to. */
    String cause() {
        return pointer + '\n' + value + '\n' + expected;
    }
}
