package evenrise.solver.rework;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;

/**
 * How many breakers have to be moved at least before every line keeps its rating: a load whose breaker stays draws on the
 * lines that it is on now, so of each line that is over, enough loads must leave to take away the excess, and no fewer do
 * than of those that draw most. A load sits in one panel, so panels add up.
 *
 * <p>Of plants with scenes nothing is said, and nothing of a node whose currents are no sums of its loads'.
 */
final class LeastBreakers {
    private LeastBreakers() {}

    /** No plan of fewer re-terminated breakers keeps every rating; 0 where nothing is known. */
    static int of(Layout asBuilt) {
        if (!asBuilt.project().scenes().isEmpty()) {
            return 0;
        }
        List<NodeLimits> limits = NodeLimits.of(asBuilt.project());
        int most = 0;
        Map<String, Integer> byPanel = new HashMap<>();
        for (int node = 0; node < limits.size(); node++) {
            NodeFigures figures = asBuilt.nodes().get(node);
            int ofNode = 0;
            for (Map.Entry<Phase, Double> line : figures.runningAmps().entrySet()) {
                double[] parts = parts(asBuilt, node, line.getKey());
                boolean isSum = Math.abs(DoubleStream.of(parts).sum() - line.getValue()) <= Tolerances.AMPS;
                ofNode = Math.max(
                        ofNode,
                        isSum
                                ? leaving(
                                        parts,
                                        line.getValue() - limits.get(node).continuousAmps())
                                : 0);
            }
            most = Math.max(most, ofNode);
            if (asBuilt.index().panel(figures.node()).isPresent()) {
                byPanel.put(figures.node(), ofNode);
            }
        }
        return Math.max(
                most, byPanel.values().stream().mapToInt(Integer::intValue).sum());
    }

    private static double[] parts(Layout asBuilt, int node, Phase phase) {
        List<Seen> seen = asBuilt.nodeLoads().seen(node);
        return seen.stream()
                .mapToDouble(each ->
                        each.parts()[phase.ordinal()] * each.placement().load().runningAmps())
                .toArray();
    }

    /** The fewest of these that take away the excess together. */
    private static int leaving(double[] parts, double excessAmps) {
        List<Double> greatestFirst =
                new ArrayList<>(DoubleStream.of(parts).boxed().toList());
        greatestFirst.sort(Collections.reverseOrder());
        double left = excessAmps - Tolerances.AMPS;
        int count = 0;
        while (left > 0 && count < greatestFirst.size()) {
            left -= greatestFirst.get(count++);
        }
        return count;
    }
}
