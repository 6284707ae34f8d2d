package evenrise.solver.rework;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.BrokenRule;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * How a state of the plant breaks rules: the places, and by how much each conductor carries too much.
 *
 * @param places every broken place that counts
 * @param excessAmps of each node in turn: running current of each phase over what is allowed, neutral current, peaks; 0
 *     where nothing is over
 */
record Harm(List<BrokenRule> places, List<Double> excessAmps) {
    /** @param counts which broken places count */
    static Harm of(Layout layout, Predicate<BrokenRule> counts) {
        return of(Evaluation.of(layout), counts);
    }

    static Harm of(Evaluation evaluation, Predicate<BrokenRule> counts) {
        Layout layout = evaluation.layout();
        List<BrokenRule> places =
                evaluation.verdict().violations().stream().filter(counts).toList();
        List<Double> excess = new ArrayList<>();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        for (int i = 0; i < limits.size(); i++) {
            NodeFigures node = layout.nodes().get(i);
            NodeLimits limit = limits.get(i);
            node.runningAmps().values().forEach(amps -> excess.add(Math.max(0, amps - limit.continuousAmps())));
            excess.add(Math.max(0, node.neutralAmps() - limit.neutralAmps()));
            for (PhasePeak peak : node.peaks()) {
                excess.add(
                        limit.inrushLimitAmps().isEmpty()
                                ? 0.0
                                : Math.max(
                                        0, peak.amps() - limit.inrushLimitAmps().getAsDouble()));
            }
        }
        return new Harm(places, excess);
    }

    /** What is worse here than at the start; empty where nothing is: no rule in more places, no conductor by more. */
    Optional<BrokenRule> worseThan(Harm start) {
        Set<String> rules = new HashSet<>();
        places.forEach(each -> rules.add(each.rule()));
        for (String rule : rules.stream().sorted().toList()) {
            List<BrokenRule> now = of(rule);
            List<BrokenRule> then = start.of(rule);
            if (now.size() > then.size()) {
                BrokenRule added = now.stream()
                        .filter(each -> !then.contains(each))
                        .findFirst()
                        .orElse(now.get(0));
                return Optional.of(added);
            }
        }
        for (int i = 0; i < excessAmps.size(); i++) {
            if (excessAmps.get(i) > start.excessAmps.get(i) + Tolerances.AMPS) {
                return Optional.of(moreOverLimit());
            }
        }
        return Optional.empty();
    }

    private List<BrokenRule> of(String rule) {
        return places.stream().filter(each -> each.rule().equals(rule)).toList();
    }

    /** That of the first conductor over its limit, by whatever rule finds it so. */
    private BrokenRule moreOverLimit() {
        BrokenRule more = WorkKind.MORE_OVER_LIMIT.about();
        return places.stream()
                .filter(each -> ELECTRICAL.contains(each.rule()))
                .findFirst()
                .map(over -> over.with()
                        .rule(more.rule())
                        .kind(more.kind())
                        .message("a conductor carries more over its limit than at the start; " + Breach.text(over))
                        .build())
                .orElse(more);
    }

    private static final Set<String> ELECTRICAL = Set.of("rating", "neutral", "inrush-limit");
}
