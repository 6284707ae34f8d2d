package evenrise.solver.document;

import evenrise.model.handout.Handout;
import evenrise.model.plan.Assessment;
import evenrise.model.rules.NodeFigures;
import evenrise.solver.report.AssessmentText;
import java.util.List;

/**
 * Everything that any format shows.
 *
 * @param nodes current over time: of the supply as each command is carried out, then of the panels, then of the further
 *     nodes in the project's order
 * @param playedNodes the supply, then the panels, then the further nodes in the project's order, as the page plays them
 * @param overview whether it may be built, and how tight it is
 * @param diagrams what is drawn: the distribution and, where there are boards, the control
 * @param handout project and plan, for whoever tries changes on the page
 * @param isOnLetter whether its country's paper is US Letter, and not A4
 * @param revised what is another than in an earlier plan
 * @param systems whose commands have clocks of their own; none where there is one clock
 */
public record Document(
        Imprint imprint,
        Assessment assessment,
        List<Fact> facts,
        List<String> findings,
        List<String> cautions,
        List<Schedule> schedules,
        DocumentTables tables,
        List<NodeCurves> nodes,
        List<PlayedLoad> loads,
        List<PlayedNode> playedNodes,
        double durationSeconds,
        double toleranceSeconds,
        List<String> phaseNames,
        List<String> phaseColours,
        String phaseColourSource,
        PlayedParts parts,
        List<String> systems,
        List<Diagram> diagrams,
        boolean isOnLetter,
        Overview overview,
        Revised revised,
        Handout handout) {
    public Document {
        facts = List.copyOf(facts);
        findings = List.copyOf(findings);
        cautions = List.copyOf(cautions);
        schedules = List.copyOf(schedules);
        nodes = List.copyOf(nodes);
        loads = List.copyOf(loads);
        playedNodes = List.copyOf(playedNodes);
        phaseNames = List.copyOf(phaseNames);
        phaseColours = List.copyOf(phaseColours);
        systems = List.copyOf(systems);
        diagrams = List.copyOf(diagrams);
    }

    /** Whether nothing is to be built from it. */
    public boolean isBroken() {
        return assessment.isBroken();
    }

    /** What stands first on every sheet. */
    public String headline() {
        return (assessment.isBroken() ? AssessmentText.NOT_TO_BE_BUILT + " " : "")
                + AssessmentText.capital(assessment.headline());
    }

    /** The supply's current over time as the command is carried out that makes most of it, one envelope a phase. */
    public List<Envelope> envelopes() {
        return supply().phases();
    }

    /** The supply's current as the command is carried out that makes most of it; of equals the first. */
    public NodeCurves supply() {
        return curves(NodeFigures.SUPPLY).stream()
                .reduce((kept, next) -> most(next) > most(kept) ? next : kept)
                .orElseThrow();
    }

    /** A node's current as each command is carried out that it is drawn for. */
    public List<NodeCurves> curves(String node) {
        return nodes.stream().filter(each -> each.node().equals(node)).toList();
    }

    private static double most(NodeCurves curves) {
        return Math.max(curves.peakAmps(), curves.usedAmps());
    }
}
