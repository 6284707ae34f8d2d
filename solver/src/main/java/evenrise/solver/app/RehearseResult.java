package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.event.EventFinding;
import evenrise.model.event.Trace;
import evenrise.solver.report.RehearsalText;
import java.util.List;

/**
 * What happened on a plan.
 *
 * @since 0.1.0
 */
public record RehearseResult(Evaluation evaluation, Trace trace) implements Listing {
    /** Whether something happened that must not. */
    public boolean isBroken() {
        return trace.findings().stream().anyMatch(each -> each.grade() == EventFinding.Grade.BROKEN);
    }

    @Override
    public List<String> text(TextStyle style) {
        return RehearsalText.lines(evaluation, trace, style.isFull(), style.paint());
    }
}
