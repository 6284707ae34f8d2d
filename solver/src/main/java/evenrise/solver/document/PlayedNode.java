package evenrise.solver.document;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotNumbering;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.PhasePeak;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * The supply, a panel or a further node as the page plays it.
 *
 * @param id the panel's or node's, or {@link evenrise.model.rules.NodeFigures#SUPPLY}
 * @param kind supply, source, transformer, node or panel
 * @param slots of the panel; 0 for others
 * @param isTwoSided odd slots on the left, even ones on the right; else one column
 * @param phases that it has, by their place among the document's
 * @param colours of its conductors, in the order of {@code phases}
 * @param starts what it carries as each command is carried out
 */
public record PlayedNode(
        String id,
        String kind,
        int slots,
        boolean isTwoSided,
        double ratedAmps,
        OptionalDouble inrushLimitAmps,
        List<Integer> phases,
        List<String> colours,
        List<Start> starts) {

    /**
     * As one command is carried out; each list by the document's phases, 0 where the node has none.
     *
     * @param restAmps what that command does not switch
     * @param peakAmps as the referee computes it, with the rest
     * @param peakAtSeconds nominal switch-on time of what makes each
     * @param usedAmps crest once all is on and in use, with the rest; 0 where one command switches all
     */
    public record Start(
            List<Double> restAmps, List<Double> peakAmps, List<Double> peakAtSeconds, List<Double> usedAmps) {
        static Start of(NodeStart start, List<Phase> all) {
            return new Start(
                    all.stream().map(phase -> amps(start.restAmps(), phase)).toList(),
                    all.stream().map(phase -> peak(start, phase).amps()).toList(),
                    all.stream().map(phase -> peak(start, phase).atSeconds()).toList(),
                    all.stream().map(phase -> amps(start.usedAmps(), phase)).toList());
        }

        private static PhasePeak peak(NodeStart start, Phase phase) {
            return start.peaks().getOrDefault(phase, new PhasePeak(phase, 0, 0));
        }

        private static double amps(Map<Phase, Double> amps, Phase phase) {
            return amps.getOrDefault(phase, 0.0);
        }
    }

    /** The supply, then the panels, then the further nodes in the project's order. */
    static List<PlayedNode> of(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<Phase> all = NodeTables.phases(layout);
        List<PlayedNode> nodes = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            NodeLimits limit = limits.get(point.index());
            PhaseColours colours = PhaseColours.of(layout.distribution(), point, layout.project());
            List<Phase> own = point.system().phases();
            nodes.add(new PlayedNode(
                    point.id(),
                    DistributionRow.kind(point),
                    point.panel().map(Panel::slots).orElse(0),
                    point.panel()
                            .map(Panel::numbering)
                            .filter(SlotNumbering.ALTERNATING::equals)
                            .isPresent(),
                    limit.ratedAmps(),
                    limit.inrushLimitAmps(),
                    own.stream().map(all::indexOf).toList(),
                    own.stream().map(colours::of).toList(),
                    layout.starts(point.index()).stream()
                            .map(start -> Start.of(start, all))
                            .toList()));
        }
        return List.copyOf(nodes);
    }
}
