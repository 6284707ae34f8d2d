package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What a project consists of is to be listed, with prices.
 *
 * @param plan read and checked; it says which control leads cross to another panel, and changes no other price
 * @param catalogue prices in the place of the project's own, .csv or .xlsx
 * @param csv where the bill is written as a table of values
 * @since 0.1.0
 */
public record BillRequest(Source project, Optional<Source> plan, Optional<Path> catalogue, Optional<Path> csv) {
    public static BillRequest of(Path project) {
        return new BillRequest(Source.file(project), Optional.empty(), Optional.empty(), Optional.empty());
    }
}
