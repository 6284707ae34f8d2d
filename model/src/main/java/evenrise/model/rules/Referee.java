package evenrise.model.rules;

import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Judges plans: every broken hard rule and every figure, from the project and the plan alone. */
public final class Referee {
    private Referee() {}

    /**
     * Judges {@code plan}, which may be broken in any way; it never throws for a plan's sake.
     *
     * @param project one without errors; what is wrong with a project is for its reader to say
     */
    public static Verdict judge(Project project, Plan plan) {
        return judge(Layout.of(project, plan));
    }

    /** Judges the plan behind {@code layout}. */
    public static Verdict judge(Layout layout) {
        List<Violation> violations = new ArrayList<>();
        for (Rule rule : Rules.ALL) {
            rule.broken(layout).forEach(message -> violations.add(new Violation(rule.id(), message)));
        }
        PhasePeak peak = worstPeak(layout.nodes().get(0));
        return new Verdict(
                List.copyOf(violations),
                metrics(layout, peak, violations.size()),
                layout.nodes(),
                new Nodes(layout).shares(peak));
    }

    /** The greatest peak of a node; of equals the first in the system's order. */
    static PhasePeak worstPeak(NodeFigures node) {
        return node.peaks().stream()
                .reduce((kept, next) -> next.amps() > kept.amps() ? next : kept)
                .orElseThrow();
    }

    private static Metrics metrics(Layout layout, PhasePeak peak, int violations) {
        NodeFigures supply = layout.nodes().get(0);
        List<NodeFigures> panels = layout.nodes().subList(1, layout.nodes().size());
        double duration = layout.times().durationSeconds();
        double objective = Objective.of(
                layout.project().objective(),
                peak.amps(),
                supply.deviationAmps(),
                panels.stream().mapToDouble(NodeFigures::deviationAmps).sum(),
                duration,
                layout.boardsUsed());
        return Metrics.builder()
                .peakInrushAmps(peak.amps())
                .peakPhase(peak.phase())
                .peakAtSeconds(peak.atSeconds())
                .supplyImbalancePercent(supply.imbalancePercent())
                .worstPanelImbalancePercent(panels.stream()
                        .map(NodeFigures::imbalancePercent)
                        .max(Comparator.naturalOrder())
                        .orElse(0.0))
                .supplyNeutralAmps(supply.neutralAmps())
                .durationSeconds(duration)
                .boardsUsed(layout.boardsUsed())
                .hardViolations(violations)
                .objective(objective)
                .build();
    }
}
