package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * The documents of a plan are to be written.
 *
 * @param against an earlier plan to tell the differences to
 * @param againstProject the earlier plan's own project, where that is another
 * @param catalogue prices in the place of the project's own, .csv or .xlsx
 * @param trials so many switch-ons are drawn for the percentiles of peaks and dips; 0 for none
 * @since 0.1.0
 */
public record ReportRequest(
        Source project,
        Source plan,
        DocumentSet documents,
        Optional<Source> against,
        Optional<Source> againstProject,
        Optional<Path> catalogue,
        int trials,
        Effort effort) {
    /** Without an earlier plan and without trials. */
    public static ReportRequest of(Path project, Path plan, DocumentSet documents) {
        return new ReportRequest(
                Source.file(project),
                Source.file(plan),
                documents,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                0,
                Effort.USUAL);
    }
}
