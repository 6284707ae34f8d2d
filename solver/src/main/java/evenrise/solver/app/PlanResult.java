package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Plan;
import evenrise.solver.report.SummaryText;
import java.util.List;

/**
 * A finished plan, judged.
 *
 * @param plan as it is written, with its figures
 * @param impossible what no plan of the project can keep
 * @since 0.1.0
 */
public record PlanResult(Evaluation evaluation, Plan plan, List<String> impossible, SearchSpent search)
        implements Listing {
    public PlanResult {
        impossible = List.copyOf(impossible);
    }

    @Override
    public List<String> text(TextStyle style) {
        return SummaryText.lines(evaluation, impossible, search.facts(), style.paint());
    }
}
