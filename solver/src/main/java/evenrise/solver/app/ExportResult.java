package evenrise.solver.app;

import java.util.List;

/**
 * A project written for others.
 *
 * @param written what was written, in words
 * @since 0.1.0
 */
public record ExportResult(List<String> written) {
    public ExportResult {
        written = List.copyOf(written);
    }
}
