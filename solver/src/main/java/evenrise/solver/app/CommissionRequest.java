package evenrise.solver.app;

import evenrise.model.intake.RecorderColumns;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Filled commissioning sheets are to be told beside a plan, and taken into its project.
 *
 * @param sheets tables of values or workbooks; none where a recording is all that there is
 * @param day on which was read what states none, as ISO 8601 has it
 * @param confirmed loads, by id, of which somebody confirms that readings were at full use
 * @param confirmsAll whether that holds of all loads
 * @param into where the project with what was measured is written
 * @param recording of the start, where one was recorded
 * @param record where the record of the plant as built is written
 * @param use in which running currents were read, by the id of the scene that the project is given for it
 * @since 0.1.0
 */
public record CommissionRequest(
        Source project,
        Source plan,
        List<Path> sheets,
        Optional<String> day,
        Set<String> confirmed,
        boolean confirmsAll,
        Optional<Path> into,
        Optional<Recorded> recording,
        Optional<DocumentSet> record,
        Optional<String> use) {
    /**
     * A recorded start.
     *
     * @param at id of the panel or node that was recorded; empty for the supply
     * @param system whose command was given; empty where the plant has no systems
     * @param columns which of a table's columns are what, as somebody has said, beside what is kept with the project
     */
    public record Recorded(Path file, Optional<String> at, Optional<String> system, List<RecorderColumns> columns) {
        public Recorded {
            columns = List.copyOf(columns);
        }
    }

    public CommissionRequest {
        sheets = List.copyOf(sheets);
        confirmed = Set.copyOf(confirmed);
    }
}
