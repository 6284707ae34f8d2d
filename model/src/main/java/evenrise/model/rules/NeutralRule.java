package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** The neutral carries no more than it is made for, at the supply and each panel. */
final class NeutralRule implements Rule {
    @Override
    public String id() {
        return "neutral";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        for (int i = 0; i < limits.size(); i++) {
            check(limits.get(i), layout.nodes().get(i), broken);
        }
        return broken;
    }

    private static void check(NodeLimits limits, NodeFigures figures, List<String> broken) {
        if (figures.neutralAmps() > limits.neutralAmps() + Tolerances.AMPS) {
            broken.add(limits.label() + " carries " + Say.amps(figures.neutralAmps(), limits.neutralAmps())
                    + " in its neutral, allowed are " + Say.amps(limits.neutralAmps(), figures.neutralAmps())
                    + " (neutral_factor "
                    + limits.neutralFactor() + ")."
                    + " Maybe balance its one-pole loads better, or spread those rich in third harmonic.");
        }
    }
}
