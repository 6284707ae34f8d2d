package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** The peak stays within the inrush limit of the supply and of each panel that has one. */
final class InrushLimitRule implements Rule {
    @Override
    public String id() {
        return "inrush-limit";
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
        PhasePeak peak = Referee.worstPeak(figures);
        limits.inrushLimitAmps().ifPresent(limit -> {
            if (peak.amps() > limit + Tolerances.AMPS) {
                broken.add(limits.label() + " peaks at " + Say.amps(peak.amps(), limit) + " on phase " + peak.phase()
                        + " at " + Say.seconds(peak.atSeconds()) + ", allowed are " + Say.amps(limit, peak.amps())
                        + ". Maybe switch the loads with the highest inrush further apart or earlier,"
                        + " or spread them over phases.");
            }
        });
    }
}
