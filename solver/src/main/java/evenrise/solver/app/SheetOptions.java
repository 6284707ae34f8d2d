package evenrise.solver.app;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What stands in the margins and the title block of the sheets of an order of work.
 *
 * @param titleBlock a file of format {@code evenrise-title/1}
 * @since 0.1.0
 */
public record SheetOptions(String revision, String date, Optional<Source> titleBlock) {
    /** Revision A of today. */
    public static SheetOptions usual() {
        return new SheetOptions("A", LocalDate.now(ZoneId.systemDefault()).toString(), Optional.empty());
    }
}
