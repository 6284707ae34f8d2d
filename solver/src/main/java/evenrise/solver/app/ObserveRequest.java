package evenrise.solver.app;

import evenrise.model.intake.RecorderColumns;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * A recorded start is to be told beside a plan.
 *
 * @param recording table of values: rms currents over time
 * @param at id of the panel or node that was recorded; empty for the supply
 * @param system whose command was given; empty where the plant has no systems
 * @param from what is before is left out, by the recorder's clock as the recording writes it
 * @param to what is after is left out
 * @param columns which of a table's columns are what, where their headers do not tell; it is kept beside the project
 * @param again further recordings of the same start at the same place, each from its beginning to its end
 * @since 0.1.0
 */
public record ObserveRequest(
        Source project,
        Source plan,
        Path recording,
        Optional<String> at,
        Optional<String> system,
        Optional<String> from,
        Optional<String> to,
        Optional<RecorderColumns> columns,
        List<Path> again) {
    public ObserveRequest {
        again = List.copyOf(again);
    }
}
