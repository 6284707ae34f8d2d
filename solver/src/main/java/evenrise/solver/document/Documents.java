package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.report.Folded;
import java.util.List;
import java.util.Optional;

/** Makes the documents of a plan from its evaluation. */
public final class Documents {
    private Documents() {}

    /**
     * @param earlier a plan to tell the differences to
     * @param scatter of trials; none where there were none
     */
    public static Document of(
            Imprint imprint, Evaluation evaluation, Optional<Plan> earlier, List<NodeScatter> scatter) {
        Layout layout = evaluation.layout();
        Verdict verdict = evaluation.verdict();
        PhaseColours colours = PhaseColours.of(layout.project().supply());
        return new Document(
                imprint,
                evaluation.assessment(),
                Cover.facts(evaluation),
                Folded.of(verdict.violations(), layout.project()).stream()
                        .map(each -> Plain.text(each.first().rule() + ": " + each.text(), 2000))
                        .toList(),
                Cautions.ALL,
                new Schedules(layout).all(),
                DocumentTables.of(evaluation, earlier, scatter),
                new Envelopes(layout).ofAllNodes(),
                layout.placements().stream()
                        .filter(Placement::fits)
                        .map(each -> played(layout, each))
                        .toList(),
                PlayedNode.of(layout),
                layout.times().durationSeconds(),
                layout.project().timingToleranceSeconds(),
                layout.project().supply().system().phases().stream()
                        .map(Phase::name)
                        .toList(),
                colours.colours(),
                colours.source());
    }

    private static PlayedLoad played(Layout layout, Placement each) {
        InrushEnvelope envelope = InrushEnvelope.of(each.load(), 0);
        PlannedCircuit circuit = PlannedCircuit.of(layout, each);
        return new PlayedLoad(
                circuit.load(),
                Plain.text(circuit.name(), 120),
                Words.word(circuit.role()),
                circuit.group().orElse(""),
                circuit.panel(),
                circuit.slots(),
                circuit.phases(),
                circuit.board().orElse(""),
                circuit.onSeconds().orElse(-1),
                envelope.baseAmps(),
                envelope.excessAmps(),
                envelope.halfLifeSeconds(),
                circuit.runningAmps());
    }
}
