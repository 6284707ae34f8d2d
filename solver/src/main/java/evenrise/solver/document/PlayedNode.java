package evenrise.solver.document;

import evenrise.model.project.Panel;
import evenrise.model.project.SlotNumbering;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PhasePeak;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The supply or a panel as the page plays it.
 *
 * @param id the panel's, or {@link NodeFigures#SUPPLY}
 * @param slots of the panel; 0 for the supply
 * @param isTwoSided odd slots on the left, even ones on the right; else one column
 * @param peakAmps of each phase, as the referee computes it
 * @param peakAtSeconds nominal switch-on time of what makes each
 */
public record PlayedNode(
        String id,
        int slots,
        boolean isTwoSided,
        double ratedAmps,
        OptionalDouble inrushLimitAmps,
        List<Double> peakAmps,
        List<Double> peakAtSeconds) {

    /** The supply, then the panels in the project's order. */
    static List<PlayedNode> of(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<PlayedNode> all = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            NodeFigures figures = layout.nodes().get(i);
            Optional<Panel> panel = i == 0
                    ? Optional.empty()
                    : Optional.of(layout.project().panels().get(i - 1));
            all.add(new PlayedNode(
                    figures.node(),
                    panel.map(Panel::slots).orElse(0),
                    panel.map(Panel::numbering)
                            .filter(SlotNumbering.ALTERNATING::equals)
                            .isPresent(),
                    limits.get(i).ratedAmps(),
                    limits.get(i).inrushLimitAmps(),
                    figures.peaks().stream().map(PhasePeak::amps).toList(),
                    figures.peaks().stream().map(PhasePeak::atSeconds).toList()));
        }
        return List.copyOf(all);
    }
}
