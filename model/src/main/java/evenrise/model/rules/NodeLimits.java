package evenrise.model.rules;

import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Supply;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the supply, one panel or one further node can take.
 *
 * @param kind which of the three it is
 * @param node the panel's or node's id, or {@link NodeFigures#SUPPLY}
 * @param label how messages call it
 * @param phases that it has, in the system's order: those of a panel's rows
 * @param ratedAmps rms rating of each line conductor
 * @param continuousFraction part of the rating that continuous running current may use
 * @param neutralFactor capacity of the neutral over that of a line conductor
 * @param inrushLimitAmps greatest allowed instantaneous peak, where there is one
 */
public record NodeLimits(
        SubjectKind kind,
        String node,
        String label,
        List<Phase> phases,
        double ratedAmps,
        double continuousFraction,
        double neutralFactor,
        OptionalDouble inrushLimitAmps) {

    /** The limits of the supply, then of the panels in the project's order, then of its further nodes: as {@link Layout#nodes()}. */
    public static List<NodeLimits> of(Project project) {
        Supply supply = project.supply();
        Distribution distribution = Distribution.of(project);
        List<NodeLimits> all = new ArrayList<>();
        all.add(new NodeLimits(
                SubjectKind.SUPPLY,
                NodeFigures.SUPPLY,
                "the supply",
                supply.system().phases(),
                supply.ratedAmps(),
                supply.continuousFraction(),
                supply.neutralFactor(),
                supply.inrushLimitAmps()));
        for (Panel panel : project.panels()) {
            all.add(new NodeLimits(
                    SubjectKind.PANEL,
                    panel.id(),
                    "panel " + Phrase.quoted(panel.id()),
                    new SlotLayout(panel, distribution.of(panel).system()).phases(),
                    panel.ratedAmps(),
                    panel.continuousFractionUnder(supply),
                    panel.neutralFactor(),
                    panel.inrushLimitAmps()));
        }
        for (DistributionNode node : project.nodes()) {
            all.add(new NodeLimits(
                    SubjectKind.NODE,
                    node.id(),
                    "distribution point " + Phrase.quoted(node.id()),
                    distribution.points().get(all.size()).system().phases(),
                    node.ratedAmps(),
                    node.continuousFraction().orElse(supply.continuousFraction()),
                    node.neutralFactor(),
                    node.inrushLimitAmps()));
        }
        return List.copyOf(all);
    }

    /** What it is and its id, as the place of a finding. */
    String place() {
        return kind == SubjectKind.SUPPLY ? node : Words.word(kind) + " " + node;
    }

    /** Greatest rms current that each line conductor may run at. */
    public double continuousAmps() {
        return ratedAmps * continuousFraction;
    }

    /** Greatest rms current that its neutral may carry. */
    public double neutralAmps() {
        return ratedAmps * neutralFactor;
    }
}
