package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** Running current on each phase stays within the continuous part of the rating, at the supply and each panel. */
final class RatingRule implements Rule {
    private static final String CLAUSE = "NEC 210.20(A) and 215.3 (clauses read in a secondary copy)";

    @Override
    public String id() {
        return "rating";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        for (int i = 0; i < limits.size(); i++) {
            check(limits.get(i), layout.nodes().get(i), broken);
        }
        return broken;
    }

    private static void check(NodeLimits limits, NodeFigures figures, List<BrokenRule> broken) {
        double allowed = limits.continuousAmps();
        figures.runningAmps().forEach((phase, amps) -> {
            if (amps > allowed + Tolerances.AMPS) {
                broken.add(Broken.by(BrokenKind.OVER_RATING)
                        .node(limits)
                        .word("phase", phase)
                        .word("fraction", RuleWords.percent(limits.continuousFraction()))
                        .word("rated", THOUSANDTHS.amps(limits.ratedAmps()))
                        .at(limits.place() + " phase " + phase)
                        .figure(amps, allowed, "A")
                        .clause(CLAUSE)
                        .build());
            }
        });
    }
}
