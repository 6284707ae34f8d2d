package evenrise.solver.app;

import evenrise.model.answer.Supposition;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.rules.Verdict;
import evenrise.solver.report.WhatIfText;
import java.util.List;

/**
 * What became of a plan.
 *
 * @param before the plan as it is
 * @param after the plan found for the project as it would be
 * @param impossible what no plan of that project can keep
 * @since 0.1.0
 */
public record WhatIfResult(List<Supposition> suppositions, Verdict before, Evaluation after, List<String> impossible)
        implements Listing {
    public WhatIfResult {
        suppositions = List.copyOf(suppositions);
        impossible = List.copyOf(impossible);
    }

    /** Whether the plan found keeps every rule. */
    public boolean keepsEveryRule() {
        return after.verdict().violations().isEmpty();
    }

    @Override
    public List<String> text(TextStyle style) {
        return WhatIfText.lines(suppositions, before, after, impossible, style.paint());
    }
}
