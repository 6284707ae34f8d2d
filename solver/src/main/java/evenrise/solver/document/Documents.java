package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.handout.Handout;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Review;
import evenrise.model.project.Board;
import evenrise.model.project.Electrical;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Phase;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.report.Folded;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Makes the documents of a plan from its evaluation. */
public final class Documents {
    private static final double LETTER_FROM_HERTZ = 55;

    private Documents() {}

    /**
     * @param before an earlier plan to tell the differences to, maybe of another state of the project
     * @param scatter of trials; none where there were none
     */
    public static Document of(
            Imprint imprint, Evaluation evaluation, Optional<Evaluation> before, List<NodeScatter> scatter) {
        Layout layout = evaluation.layout();
        Verdict verdict = evaluation.verdict();
        PlayedParts.Ways ways = PlayedParts.of(layout);
        List<String> systems = layout.project().hasClocks()
                ? layout.project().systems().stream().map(SwitchedSystem::id).toList()
                : List.of();
        PlanState alone = state(evaluation, scatter);
        Optional<PlanState> was = before.map(each -> state(each, List.of()));
        DocumentTables tables = was.map(each -> alone.tables().with(ChangeTables.of(each, alone)))
                .orElse(alone.tables());
        Revised revised = was.map(each ->
                        Revised.of(each, new PlanState(evaluation, tables, alone.schedules(), alone.diagrams())))
                .orElse(Revised.NOT);
        Set<String> dropping = layout.project().shutdownGroups().stream()
                .filter(group -> group.onEmergency() == OnEmergency.DROP)
                .map(ShutdownGroup::id)
                .collect(Collectors.toSet());
        PhaseColours colours = PhaseColours.of(layout.project().supply());
        return new Document(
                imprint,
                evaluation.assessment(),
                Cover.facts(evaluation),
                Folded.of(verdict.violations(), layout.project()).stream()
                        .map(each -> Plain.text(each.first().rule() + ": " + each.text(), 2000))
                        .toList(),
                Cautions.ALL,
                alone.schedules(),
                tables,
                new Envelopes(layout).ofAllNodes(),
                layout.placements().stream()
                        .filter(Placement::fits)
                        .map(each -> played(
                                layout, each, systems, dropping, ways.ofLoad().get(each.id())))
                        .toList(),
                PlayedNode.of(layout),
                layout.clocks().longestSeconds(),
                layout.project().timingToleranceSeconds(),
                NodeTables.phases(layout).stream().map(Phase::name).toList(),
                colours.colours(),
                colours.source(),
                ways.parts(),
                systems,
                alone.diagrams(),
                isOnLetter(layout.project()),
                Overview.of(evaluation, tables.margins()),
                revised,
                Handout.of(imprint.projectSha256(), layout.project(), layout.plan()));
    }

    private static PlanState state(Evaluation evaluation, List<NodeScatter> scatter) {
        List<Schedule> schedules =
                new Schedules(evaluation.layout(), evaluation.review(), SheetWords.in(SheetLanguage.EN)).all();
        return new PlanState(
                evaluation,
                DocumentTables.of(evaluation, schedules, scatter),
                schedules,
                diagrams(evaluation.layout(), evaluation.review()));
    }

    /** By practice, else by frequency: where it is 60 Hz, most have Letter (common practice, no source). */
    private static boolean isOnLetter(Project project) {
        return project.electrical()
                .flatMap(Electrical::practice)
                .map(practice -> practice == Practice.NEC)
                .orElse(project.supply().frequencyHertz() >= LETTER_FROM_HERTZ);
    }

    private static List<Diagram> diagrams(Layout layout, Review review) {
        List<Diagram> diagrams = new ArrayList<>(List.of(OneLineDiagram.of(layout, review)));
        if (!layout.project().boards().isEmpty()) {
            diagrams.add(ControlDiagram.of(layout));
        }
        RiserDiagram.of(layout).ifPresent(diagrams::add);
        return diagrams;
    }

    private static PlayedLoad played(
            Layout layout, Placement each, List<String> systems, Set<String> dropping, int way) {
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
                switching(layout, each),
                circuit.onSeconds().orElse(circuit.isSwitched() ? PlayedLoad.NOT_ASSIGNED : PlayedLoad.ALWAYS_ON),
                envelope.baseAmps(),
                envelope.excessAmps(),
                envelope.halfLifeSeconds(),
                circuit.runningAmps(),
                each.isSequenced() ? circuit.system().map(systems::indexOf).orElse(-1) : -1,
                way,
                each.load().settleSeconds(),
                circuit.isSwitched()
                        && circuit.group().filter(dropping::contains).isPresent());
    }

    /** The board that switches it, or the contactor that it is behind; empty where nothing does. */
    private static String switching(Layout layout, Placement each) {
        return each.load()
                .comesWith()
                .flatMap(layout::placement)
                .orElse(each)
                .board()
                .map(Board::id)
                .orElse("");
    }
}
