package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.solver.report.AssessmentText;
import java.util.List;

/**
 * Documents of a plan, written.
 *
 * @param evaluation its bounds are computed when asked for: no document shows them
 * @param written names of files in the folder
 * @since 0.1.0
 */
public record ReportResult(Evaluation evaluation, List<String> written) implements Listing {
    public ReportResult {
        written = List.copyOf(written);
    }

    @Override
    public List<String> text(TextStyle style) {
        return AssessmentText.lines(evaluation.assessment(), style.paint());
    }
}
