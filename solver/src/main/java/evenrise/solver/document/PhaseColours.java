package evenrise.solver.document;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Supply;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import java.util.List;

/**
 * Colours of conductors, by the practice that fits voltage and frequency; black is drawn as a dark grey.
 *
 * @param source names the practice
 */
record PhaseColours(List<String> colours, String source) {
    static PhaseColours of(Supply supply) {
        return of(supply.system(), supply.lineToNeutralVolts(), supply.frequencyHertz());
    }

    /** Those at the voltage of a point. */
    static PhaseColours of(Distribution distribution, Point point, Project project) {
        double hertz = distribution
                .points()
                .get(distribution.root(point.index()))
                .node()
                .flatMap(DistributionNode::source)
                .map(NodeSource::frequencyHertz)
                .orElse(project.supply().frequencyHertz());
        return of(point.system(), point.lineToNeutralVolts(), hertz);
    }

    /** Of the conductor of a phase. */
    String of(Phase phase) {
        return colours.get(phase.ordinal());
    }

    private static PhaseColours of(PhaseSystem system, double lineToNeutralVolts, double hertz) {
        if (hertz < 55) {
            return new PhaseColours(
                    List.of("#8a5a2b", "#2b2b2b", "#8f8f8f"),
                    "Phase colours of conductors: brown, black, grey (IEC 60445)");
        }
        return lineToNeutralVolts > 200 && system == PhaseSystem.THREE_PHASE
                ? new PhaseColours(
                        List.of("#8a5a2b", "#d9822b", "#c9b400"),
                        "Phase colours of conductors: brown, orange, yellow (practice in the United States above 150 V to ground)")
                : new PhaseColours(
                        List.of("#2b2b2b", "#b3261e", "#1f4fa3"),
                        "Phase colours of conductors: black, red, blue (practice in the United States)");
    }
}
