package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.solver.recording.RecordedColumn;
import evenrise.solver.recording.RecordingFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The columns of a recorded table.
 *
 * @param isTold whether time and currents are known, by their headers or by what was said of them
 * @param columns in their order; none where the file has no row of headers, or says itself what is in it
 * @since 0.1.0
 */
public record RecordedColumnsResult(boolean isTold, List<Column> columns) {
    /**
     * One column.
     *
     * @param example what stands in it first
     * @param means {@code time}, or a phase; empty where it is not read
     */
    public record Column(String header, String example, String means) {}

    public RecordedColumnsResult {
        columns = List.copyOf(columns);
    }

    static RecordedColumnsResult of(Path recording, Path project, Consumer<String> note) {
        try {
            List<RecordedColumn> columns = RecordingFile.columns(
                    recording, RecorderBook.besides(Optional.of(project), note).with(Optional.empty()));
            return new RecordedColumnsResult(
                    columns.stream().anyMatch(each -> each.means().equals(RecordedColumn.TIME)),
                    columns.stream()
                            .map(each -> new Column(each.header(), each.example(), each.means()))
                            .toList());
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    "'" + Harmless.shown(recording.getFileName().toString()) + "' cannot be read: "
                            + Harmless.shown(String.valueOf(e.getMessage())) + ".");
        }
    }
}
