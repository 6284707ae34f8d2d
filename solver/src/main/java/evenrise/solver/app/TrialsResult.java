package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.report.AssessmentText;
import evenrise.solver.report.ScatterText;
import java.util.ArrayList;
import java.util.List;

/**
 * Percentiles of peaks and dips at each node.
 *
 * @since 0.1.0
 */
public record TrialsResult(Evaluation evaluation, List<NodeScatter> nodes, int trials, long seed) implements Listing {
    public TrialsResult {
        nodes = List.copyOf(nodes);
    }

    @Override
    public List<String> text(TextStyle style) {
        List<String> lines = new ArrayList<>(AssessmentText.lines(evaluation.assessment(), style.paint()));
        lines.add("");
        lines.addAll(ScatterText.lines(evaluation.project(), nodes, trials, seed, style.isFull(), style.paint()));
        return lines;
    }
}
