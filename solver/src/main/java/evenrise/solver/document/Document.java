package evenrise.solver.document;

import evenrise.model.plan.Assessment;
import evenrise.solver.report.AssessmentText;
import java.util.List;

/**
 * Everything that any format shows.
 *
 * @param nodes the supply's current over time, then that of each panel, in the order of the schedules
 * @param playedNodes the supply, then the panels in the project's order, as the page draws and plays them
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
        String phaseColourSource) {
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

    /** The supply's current over time, one envelope a phase. */
    public List<Envelope> envelopes() {
        return nodes.get(0).phases();
    }
}
