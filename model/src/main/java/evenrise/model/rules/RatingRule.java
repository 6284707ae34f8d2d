package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** Running current on each phase stays within the continuous part of the rating, at the supply and each panel. */
final class RatingRule implements Rule {
    @Override
    public String id() {
        return "rating";
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
        double allowed = limits.continuousAmps();
        figures.runningAmps().forEach((phase, amps) -> {
            if (amps > allowed + Tolerances.AMPS) {
                broken.add(limits.label() + " phase " + phase + " runs at " + Say.amps(amps, allowed) + ", allowed are "
                        + Say.percent(limits.continuousFraction()) + " of " + Say.amps(limits.ratedAmps())
                        + ", which is "
                        + Say.amps(allowed, amps) + ". Maybe move a load to another phase or panel.");
            }
        });
    }
}
