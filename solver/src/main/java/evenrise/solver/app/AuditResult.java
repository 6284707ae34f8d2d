package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Json;
import evenrise.model.project.TakenDefault;
import evenrise.solver.report.AuditFile;
import evenrise.solver.report.AuditText;
import java.util.List;

/**
 * A plan, judged.
 *
 * @param projectSha256 of the project's file
 * @param impossible what no plan of the project can keep
 * @param defaults what became of each field of the project's defaults
 * @since 0.1.0
 */
public record AuditResult(
        Evaluation evaluation, String projectSha256, List<String> impossible, List<TakenDefault> defaults)
        implements Listing {
    public AuditResult {
        defaults = List.copyOf(defaults);
        impossible = List.copyOf(impossible);
    }

    @Override
    public List<String> text(TextStyle style) {
        return AuditText.lines(evaluation, sheet(), style.isFull(), style.paint());
    }

    /** All of it, as the audit's own schema says. */
    public String json() {
        return Json.of(sheet());
    }

    private AuditFile sheet() {
        return AuditFile.of(evaluation, projectSha256, defaults);
    }
}
