package evenrise.solver.document;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.rules.Layout;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.report.BillRow;
import evenrise.solver.report.BoardUse;
import evenrise.solver.report.GroupUse;
import evenrise.solver.report.NodeUse;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The tables of a document, for who draws each in its own way; {@link #all} for who draws them alike.
 *
 * @param rules that are broken; none where all are kept
 * @param poles the commissioning sheet with a row a pole, to be filled in and read
 * @param residual none where the project states no residual-current device
 * @param unstated loads that state too little; none where all state enough
 * @param motors none where the project has none
 * @param percentiles none where there were no trials
 * @param changes none where there is no earlier plan
 * @param distribution none where the supply feeds every panel
 * @param systems none where one command switches all
 * @param starts none where systems have no clocks of their own
 * @param scenes none where there are none
 */
public record DocumentTables(
        DocumentTable<JudgedCount> assessment,
        Optional<DocumentTable<BrokenRule>> rules,
        DocumentTable<Margin> margins,
        DocumentTable<Quantity> checks,
        DocumentTable<PlannedCircuit> circuits,
        DocumentTable<PlannedCircuit> landing,
        DocumentTable<BoardUse> settings,
        DocumentTable<SwitchOn> steps,
        DocumentTable<NodeUse> balance,
        DocumentTable<NodeOverRange> range,
        DocumentTable<GroupUse> groups,
        DocumentTable<EmergencyEffect> emergency,
        DocumentTable<PeakPart> peak,
        DocumentTable<Remark> review,
        DocumentTable<NodeHappenings> events,
        DocumentTable<BillRow> bill,
        DocumentTable<PlannedCircuit> commissioning,
        DocumentTable<MeasuredPole> poles,
        DocumentTable<PanelTest> tests,
        DocumentTable<PanelTest> feeders,
        DocumentTable<PlannedCircuit> labels,
        DocumentTable<EquipmentLabel> equipment,
        DocumentTable<DirectoryLine> directory,
        Optional<DocumentTable<ResidualTest>> residual,
        Optional<DocumentTable<UnstatedLoad>> unstated,
        Optional<DocumentTable<PlannedCircuit>> motors,
        Optional<DocumentTable<NodeScatter>> percentiles,
        Optional<ChangeTables> changes,
        Optional<DocumentTable<DistributionRow>> distribution,
        Optional<DocumentTable<SystemRow>> systems,
        Optional<DocumentTable<StartRow>> starts,
        Optional<DocumentTable<SceneRow>> scenes) {

    static DocumentTables of(Evaluation evaluation, List<Schedule> schedules, List<NodeScatter> scatter) {
        Layout layout = evaluation.layout();
        List<PlannedCircuit> along = PlannedCircuit.along(layout);
        CircuitTables circuits = new CircuitTables(layout, along);
        ControlTables control = new ControlTables(layout);
        NodeTables nodes = new NodeTables(layout);
        SiteTables site = new SiteTables(layout);
        PlantTables plant = new PlantTables(layout);
        return new DocumentTables(
                AssessmentTable.of(evaluation),
                Optional.of(FindingTables.rules(evaluation.verdict()))
                        .filter(rules -> !rules.rows().isEmpty()),
                MarginTable.of(layout, evaluation.review()),
                CheckTable.of(layout, evaluation.review()),
                circuits.circuits(),
                control.landing(),
                control.settings(),
                control.sequence(),
                nodes.balance(),
                nodes.range(),
                EmergencyTables.groups(layout),
                EmergencyTables.loads(layout, along),
                new PeakParts(layout).table(),
                FindingTables.review(evaluation.review()),
                nodes.events(),
                BillTable.of(BillOfMaterials.of(layout.project(), Optional.of(layout.plan()))),
                circuits.commissioning(),
                circuits.poles(),
                site.tests(),
                site.feeders(),
                circuits.labels(),
                EquipmentLabel.table(layout, evaluation.review()),
                DirectoryLine.table(schedules, SheetWords.in(SheetLanguage.EN)),
                site.residual(),
                nodes.unstated(),
                circuits.motors(),
                scatter.isEmpty() ? Optional.empty() : Optional.of(NodeTables.percentiles(scatter)),
                Optional.empty(),
                plant.distribution(),
                plant.systems(),
                plant.starts(),
                plant.scenes());
    }

    /** The same beside those of an earlier plan. */
    DocumentTables with(ChangeTables beside) {
        return new DocumentTables(
                assessment,
                rules,
                margins,
                checks,
                circuits,
                landing,
                settings,
                steps,
                balance,
                range,
                groups,
                emergency,
                peak,
                review,
                events,
                bill,
                commissioning,
                poles,
                tests,
                feeders,
                labels,
                equipment,
                directory,
                residual,
                unstated,
                motors,
                percentiles,
                Optional.of(beside),
                distribution,
                systems,
                starts,
                scenes);
    }

    /** In the order of a document. */
    public List<DocumentTable<?>> all() {
        return Stream.<Stream<? extends DocumentTable<?>>>of(
                        Stream.of(assessment),
                        rules.stream(),
                        Stream.of(margins, checks),
                        distribution.stream(),
                        systems.stream(),
                        scenes.stream(),
                        Stream.of(circuits, landing, settings, steps, balance, range),
                        starts.stream(),
                        Stream.of(groups, emergency, peak, review, events, bill, commissioning, tests),
                        residual.stream(),
                        Stream.of(labels, equipment, directory),
                        unstated.stream(),
                        motors.stream(),
                        percentiles.stream(),
                        changes.stream().flatMap(ChangeTables::all))
                .flatMap(each -> each)
                .<DocumentTable<?>>map(each -> each)
                .toList();
    }

    /** The same for who fills them in: a row a pole, feeders, and the meters. */
    public List<DocumentTable<?>> toFillIn() {
        return all().stream()
                .<DocumentTable<?>>flatMap(each -> each == commissioning
                        ? Stream.of(poles)
                        : each == tests ? Stream.of(tests, feeders, SiteTables.meters()) : Stream.of(each))
                .toList();
    }
}
