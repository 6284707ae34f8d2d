package evenrise.solver.document;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import evenrise.model.scatter.NodeScatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
                verdict.violations().stream()
                        .map(each -> Plain.text(each.rule() + ": " + each.message(), 2000))
                        .toList(),
                Cautions.ALL,
                new Schedules(layout).all(),
                grids(evaluation, earlier, scatter),
                new Envelopes(layout).ofAllNodes(),
                layout.placements().stream()
                        .filter(Placement::fits)
                        .map(Documents::played)
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

    private static List<Grid> grids(Evaluation evaluation, Optional<Plan> earlier, List<NodeScatter> scatter) {
        Layout layout = evaluation.layout();
        Verdict verdict = evaluation.verdict();
        CircuitTables circuits = new CircuitTables(layout);
        ControlTables control = new ControlTables(layout);
        NodeTables nodes = new NodeTables(layout);
        EmergencyTables emergency = new EmergencyTables(layout);
        List<Grid> all = new ArrayList<>(List.of(AssessmentTable.of(evaluation)));
        if (!verdict.violations().isEmpty()) {
            all.add(FindingTables.rules(verdict));
        }
        all.addAll(List.of(
                circuits.circuits(),
                control.landing(),
                control.settings(),
                control.sequence(),
                nodes.balance(),
                nodes.range(),
                emergency.groups(),
                emergency.loads(),
                new PeakParts(layout).grid(),
                FindingTables.review(evaluation.review()),
                nodes.events(),
                BillTable.of(layout.project()),
                circuits.commissioning(),
                circuits.labels()));
        nodes.unstated().ifPresent(all::add);
        circuits.motors().ifPresent(all::add);
        if (!scatter.isEmpty()) {
            all.add(nodes.percentiles(scatter));
        }
        earlier.ifPresent(plan -> all.add(Differences.of(layout, plan)));
        return all;
    }

    private static PlayedLoad played(Placement each) {
        InrushEnvelope envelope = InrushEnvelope.of(each.load(), 0);
        return new PlayedLoad(
                each.id(),
                Plain.text(each.load().name(), 120),
                each.load().role().name().toLowerCase(Locale.ROOT),
                each.load().shutdownGroup().orElse(""),
                each.assignment().panel(),
                Places.slots(each),
                Places.phases(each),
                Places.board(each),
                each.onSeconds().orElse(-1),
                envelope.baseAmps(),
                envelope.excessAmps(),
                envelope.halfLifeSeconds(),
                each.load().runningAmps());
    }
}
