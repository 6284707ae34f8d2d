package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Metrics;
import java.util.List;

/**
 * What the rules say of a plan.
 *
 * @param violations every broken hard rule, each place counted
 * @param metrics the plan's figures
 * @param nodes the supply first, then the panels in the project's order
 * @param peakShares what makes {@code metrics.peakInrushAmps}, largest first
 */
public record Verdict(
        List<BrokenRule> violations, Metrics metrics, List<NodeFigures> nodes, List<PeakShare> peakShares) {}
