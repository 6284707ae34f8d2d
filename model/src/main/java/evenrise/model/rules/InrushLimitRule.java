package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** The peak stays within the inrush limit of the supply and of each panel that has one. */
final class InrushLimitRule implements WholePlantRule {
    @Override
    public String id() {
        return "inrush-limit";
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
        PhasePeak peak = Referee.worstPeak(figures);
        limits.inrushLimitAmps().ifPresent(limit -> {
            if (peak.amps() > limit + Tolerances.AMPS) {
                broken.add(Broken.by(BrokenKind.OVER_INRUSH_LIMIT)
                        .node(limits)
                        .word("phase", peak.phase())
                        .word("at", THOUSANDTHS.seconds(peak.atSeconds()))
                        .at(limits.place() + " phase " + peak.phase())
                        .figure(peak.amps(), limit, "A")
                        .build());
            }
        });
    }
}
