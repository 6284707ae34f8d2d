package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** The neutral carries no more than it is made for, at the supply and each panel. */
final class NeutralRule implements Rule {
    @Override
    public String id() {
        return "neutral";
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
        if (figures.neutralAmps() > limits.neutralAmps() + Tolerances.AMPS) {
            broken.add(Broken.by(BrokenKind.OVER_NEUTRAL)
                    .node(limits)
                    .word("factor", limits.neutralFactor())
                    .at(limits.place() + " neutral")
                    .figure(figures.neutralAmps(), limits.neutralAmps(), "A")
                    .build());
        }
    }
}
