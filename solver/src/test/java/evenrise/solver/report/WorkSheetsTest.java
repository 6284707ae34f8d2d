package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.solver.rework.AnOrderedWork;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import evenrise.solver.rework.WorkStepKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What sheets say, before anybody writes it. */
class WorkSheetsTest {
    private final AnOrderedWork work = new AnOrderedWork("mover");
    private final WorkSheets sheets = work.sheets();

    private Stream<WorkStep> steps(WorkStepKind... kinds) {
        return sheets.order().stages().stream()
                .flatMap(stage -> stage.steps().stream())
                .filter(step -> Set.of(kinds).contains(step.kind()));
    }

    /** So that the tests below have something to look at. */
    @Test
    void theWorkHasEveryKindOfChange() {
        assertThat(steps(WorkStepKind.values()).map(WorkStep::kind))
                .contains(
                        WorkStepKind.RE_TERMINATE,
                        WorkStepKind.PUT_IN,
                        WorkStepKind.REMOVE,
                        WorkStepKind.LEAVE_SPARE,
                        WorkStepKind.REMOVE_LEAD,
                        WorkStepKind.RE_LAND);
        assertThat(sheets.order().breaches()).isEmpty();
    }

    @Test
    void haveAStageEachWithEachOfItsSteps() {
        assertThat(sheets.sheets()).hasSameSizeAs(sheets.order().stages());
        for (int i = 0; i < sheets.sheets().size(); i++) {
            WorkSheet sheet = sheets.sheets().get(i);
            WorkStage stage = sheets.order().stages().get(i);
            assertThat(sheet.number()).isEqualTo(i + 1);
            assertThat(sheet.steps()).hasSameSizeAs(stage.steps());
            for (int k = 0; k < stage.steps().size(); k++) {
                WorkSheet.Line line = sheet.steps().get(k);
                assertThat(line.number()).isEqualTo(k + 1);
                stage.steps()
                        .get(k)
                        .load()
                        .ifPresent(load -> assertThat(line.text()).contains(load));
            }
        }
    }

    /** The referee judges the same plant once as stated and once with every load at its idle current. */
    @Test
    void haveTheRefereesCurrentsAtIdleAndAtFullUse() {
        for (int i = 0; i < sheets.sheets().size(); i++) {
            WorkStage stage = sheets.order().stages().get(i);
            Project project = work.plant().at(stage.after());
            Layout full = Layout.of(project, stage.after());
            Layout idle = Layout.of(
                    project.withLoads(project.loads().stream()
                            .map(load -> load.withRunningAmps(load.idleAmps()))
                            .toList()),
                    stage.after());

            for (MeteredLine each : sheets.sheets().get(i).currents()) {
                NodeFigures atFull = node(full, each.where());
                NodeFigures atIdle = node(idle, each.where());
                if (each.isNeutral()) {
                    assertThat(each.idleAmps()).isCloseTo(atIdle.neutralAmps(), within(1e-9));
                    assertThat(each.fullAmps())
                            .isCloseTo(full.worstNeutralAmps().get(full.nodes().indexOf(atFull)), within(1e-9));
                } else {
                    Phase line = Phase.valueOf(each.line());
                    assertThat(each.idleAmps()).isCloseTo(atIdle.runningAmps().get(line), within(1e-9));
                    assertThat(each.fullAmps()).isCloseTo(atFull.runningAmps().get(line), within(1e-9));
                    assertThat(each.fullPhasorAmps().getAsDouble())
                            .isCloseTo(atFull.phasorAmps().get(line), within(1e-9));
                }
            }
        }
    }

    private static NodeFigures node(Layout layout, String where) {
        return layout.nodes().stream()
                .filter(each -> where.equals("panel " + each.node()) || where.equals(each.node()))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void measureTheSupplyAndEachPanelThatWasTouched() {
        assertThat(sheets.sheets())
                .allSatisfy(sheet -> assertThat(sheet.currents())
                        .extracting(MeteredLine::where)
                        .contains(NodeFigures.SUPPLY)
                        .hasSizeGreaterThan(4));
    }

    private List<String> changes(String panel, int slot) {
        List<String> all = new ArrayList<>();
        sheets.sheets()
                .forEach(sheet -> sheet.pictures().stream()
                        .filter(picture -> picture.panel().equals(panel))
                        .flatMap(picture -> picture.positions().stream())
                        .filter(each -> each.number() == slot && each.isChanged())
                        .forEach(each -> all.addAll(each.changes())));
        return all;
    }

    @Test
    void drawWhereEachBreakerCameFromAndWentTo() {
        assertThat(changes("P1", 5)).contains("from slot 3", "gone gone: cap and tag");
        assertThat(changes("P1", 3)).containsExactly("mover to slot 5");
        assertThat(changes("P1", 7)).containsExactly("far to panel P2 slot 1");
        assertThat(changes("P2", 1)).containsExactly("from panel P1 slot 7");
        assertThat(changes("P2", 3)).containsExactly("new breaker");
        assertThat(changes("P1", 2)).containsExactly("left as a spare", "old gone: cap and tag");
    }

    @Test
    void drawLeadsThatGoToAnotherOutput() {
        assertThat(sheets.sheets())
                .anySatisfy(sheet -> assertThat(sheet.pictures())
                        .flatExtracting(PanelPicture::positions)
                        .anySatisfy(each -> {
                            assertThat(each.now()).isEqualTo("lead");
                            assertThat(each.isChanged()).isFalse();
                            assertThat(each.controlWas()).isEqualTo("B1/4");
                            assertThat(each.control()).isEqualTo("B1/3");
                        }));
    }

    /** The last picture of each panel shows the plan that the work leads to. */
    @Test
    void leaveEachLoadWhereThePlanHasIt() {
        WorkStage last = sheets.order().stages().get(sheets.order().stages().size() - 1);
        WorkSheet sheet = sheets.sheets().get(sheets.sheets().size() - 1);

        for (PanelPicture picture : sheet.pictures()) {
            last.after().assignments().stream()
                    .filter(seat -> seat.panel().equals(picture.panel()))
                    .forEach(seat -> assertThat(
                                    picture.positions().get(seat.slot() - 1).now())
                            .isEqualTo(seat.load()));
        }
    }

    @Test
    void tellTheWayBackFromEachStepThatMovesSomething() {
        for (int i = 0; i < sheets.sheets().size(); i++) {
            List<WorkStep> steps = sheets.order().stages().get(i).steps();
            for (int k = 0; k < steps.size(); k++) {
                Optional<String> back = sheets.sheets().get(i).steps().get(k).back();
                switch (steps.get(k).kind()) {
                    case RE_TERMINATE, PUT_IN, REMOVE, LEAVE_SPARE, REMOVE_LEAD, RE_LAND ->
                        assertThat(back)
                                .hasValueSatisfying(how ->
                                        assertThat(how).containsPattern("back (to|on|into) |take it out|lift it"));
                    default -> assertThat(back).isEmpty();
                }
            }
        }
    }

    @Test
    void lockOutWhatIsIsolatedAndEachLoadWhereItIs() {
        for (int i = 0; i < sheets.sheets().size(); i++) {
            WorkStage stage = sheets.order().stages().get(i);
            List<String> locked = sheets.sheets().get(i).locks().stream()
                    .map(WorkSheet.Lock::what)
                    .toList();
            assertThat(locked).containsAll(stage.lockedOut());
            stage.deadPanels().forEach(panel -> assertThat(locked).contains("panel " + panel));
        }
        assertThat(sheets.sheets())
                .flatExtracting(WorkSheet::locks)
                .contains(
                        new WorkSheet.Lock("far", "panel P1 slot 7"),
                        new WorkSheet.Lock("fresh", "panel P2 slot 3, where its breaker is to be"));
    }

    /** Where two stages share a night, the second begins when the first ends. */
    @Test
    void countMinutesFromTheBeginOfTheNight() {
        WorkSheets night = work.sheets(10_000.0);

        double over = 0;
        for (WorkSheet each : night.sheets()) {
            assertThat(each.night()).isEqualTo(1);
            assertThat(each.nightMinutes()).isCloseTo(over, within(1e-9));
            over += each.minutes();
        }
        assertThat(night.nights().get(0).minutes()).isCloseTo(over, within(1e-9));
        assertThat(night.nights().get(0).morning())
                .isEqualTo(night.sheets().get(night.sheets().size() - 1).end().inShort());
    }

    @Test
    void nameStagesThatNoNightIsLeftFor() {
        WorkSheets none = work.sheets(1.0);

        assertThat(none.left()).hasSameSizeAs(none.sheets());
        assertThat(none.sheets()).allSatisfy(each -> assertThat(each.night()).isZero());
        assertThat(OrderText.headline(none)).contains("NO NIGHT LEFT", "BROKEN ON THE WAY");
        assertThat(OrderText.isAlarm(none)).isTrue();
        assertThat(sheets.left()).isEmpty();
        assertThat(OrderText.headline(sheets)).doesNotContain("NO NIGHT LEFT");
        assertThat(sheets.sheets().get(sheets.sheets().size() - 1).end().broken())
                .isEmpty();
        assertThat(OrderText.isAlarm(sheets)).isFalse();
    }
}
