package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.MetricsBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

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
        return judge(layout, Optional.empty());
    }

    /** @param earlier plan that moves are counted from */
    public static Verdict judge(Layout layout, Optional<Plan> earlier) {
        List<BrokenRule> violations = new ArrayList<>();
        for (Rule rule : Rules.ALL) {
            violations.addAll(rule.broken(layout));
        }
        PhasePeak peak = worstPeak(layout.nodes().get(Distribution.SUPPLY));
        return new Verdict(
                List.copyOf(violations),
                metrics(layout, peak, violations.size(), earlier),
                layout.nodes(),
                layout.peakShares(Distribution.SUPPLY));
    }

    /** The greatest peak of a node; of equals the first in the system's order. */
    static PhasePeak worstPeak(NodeFigures node) {
        return node.peaks().stream()
                .reduce((kept, next) -> next.amps() > kept.amps() ? next : kept)
                .orElseThrow();
    }

    private static Metrics metrics(Layout layout, PhasePeak peak, int violations, Optional<Plan> earlier) {
        NodeFigures supply = layout.nodes().get(Distribution.SUPPLY);
        List<NodeFigures> panels = figures(layout, point -> point.panel().isPresent());
        List<NodeFigures> sources = figures(layout, Point::isFurtherSource);
        List<NodeFigures> between = figures(layout, point -> point.node().isPresent() && !point.isFurtherSource());
        double duration = layout.clocks().longestSeconds();
        double sourcePeaks =
                sources.stream().mapToDouble(each -> worstPeak(each).amps()).sum();
        MetricsBuilder metrics = Metrics.builder()
                .peakInrushAmps(peak.amps())
                .peakPhase(peak.phase())
                .peakAtSeconds(peak.atSeconds())
                .supplyImbalancePercent(supply.imbalancePercent())
                .worstPanelImbalancePercent(worstPercent(panels))
                .supplyNeutralAmps(supply.neutralAmps())
                .durationSeconds(duration)
                .boardsUsed(layout.boardsUsed())
                .hardViolations(violations);
        if (!sources.isEmpty()) {
            metrics.sourcePeaksAmps(sourcePeaks);
        }
        if (!between.isEmpty()) {
            metrics.worstNodeImbalancePercent(worstPercent(between));
        }
        RackSpread.of(layout)
                .ifPresent(racks -> metrics.rackPanels(racks.panels())
                        .rackBoards(racks.boards())
                        .rackRows(racks.rows()));
        earlier.map(plan -> Rewiring.of(layout, plan))
                .ifPresent(moves -> metrics.movedBreakers(moves.breakers())
                        .movedLeads(moves.leads())
                        .movedSettings(moves.settings()));
        ObjectiveWeights weights = layout.project().objective();
        double objective = Objective.of(
                weights,
                peak.amps() + sourcePeaks,
                supply.deviationAmps() + deviationsAmps(sources),
                deviationsAmps(panels),
                duration,
                layout.boardsUsed());
        double further = Objective.further(
                weights, deviationsAmps(between), metrics.objective(0).build());
        return metrics.objective(objective + further).build();
    }

    private static List<NodeFigures> figures(Layout layout, Predicate<Point> which) {
        return layout.distribution().points().stream()
                .filter(which)
                .map(point -> layout.nodes().get(point.index()))
                .toList();
    }

    private static double deviationsAmps(List<NodeFigures> nodes) {
        return nodes.stream().mapToDouble(NodeFigures::deviationAmps).sum();
    }

    private static double worstPercent(List<NodeFigures> nodes) {
        return nodes.stream().mapToDouble(NodeFigures::imbalancePercent).max().orElse(0);
    }
}
