package evenrise.solver.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Filled commissioning sheets are to be told beside a plan, and taken into its project.
 *
 * @param sheets tables of values or workbooks
 * @param day on which was read what states none, as ISO 8601 has it
 * @param confirmed loads, by id, of which somebody confirms that readings were at full use
 * @param confirmsAll whether that holds of all loads
 * @param into where the project with what was measured is written
 * @since 0.1.0
 */
public record CommissionRequest(
        Source project,
        Source plan,
        List<Path> sheets,
        Optional<String> day,
        Set<String> confirmed,
        boolean confirmsAll,
        Optional<Path> into) {
    public CommissionRequest {
        sheets = List.copyOf(sheets);
        confirmed = Set.copyOf(confirmed);
    }
}
