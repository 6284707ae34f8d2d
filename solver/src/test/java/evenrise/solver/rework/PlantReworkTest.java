package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.AssignmentBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.search.AssertedSearch;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Work in plants whose panels feed others, with contactors and outputs of their own times. */
class PlantReworkTest {
    private static List<WorkStep> steps(WorkOrder order) {
        return order.stages().stream().flatMap(stage -> stage.steps().stream()).toList();
    }

    private static List<String> said(WorkOrder order, WorkStepKind kind) {
        return steps(order).stream()
                .filter(step -> step.kind() == kind)
                .map(step -> step.load().or(step::panel).orElse(""))
                .toList();
    }

    @Nested
    class WhereAPanelFeedsAnother {
        private final Project project = aProject()
                .supply(aSupply().ratedAmps(200))
                .panels(
                        aPanel("main").slots(12).ratedAmps(100),
                        aPanel("sub").slots(12).ratedAmps(60).with(it -> it.fedFrom(Optional.of("busbar"))),
                        aPanel("other").slots(12).ratedAmps(60))
                .with(it -> it.nodes(List.of(DistributionNode.builder()
                        .id("busbar")
                        .fedFrom(Optional.of("main"))
                        .ratedAmps(60)
                        .build())))
                .loads(
                        aLoad("fan").unswitched().runningAmps(5),
                        aLoad("lamp").unswitched().runningAmps(4),
                        aLoad("pump").unswitched().runningAmps(3))
                .build();
        private final Plan built = plan("main", 1, 1);

        private Plan plan(String panelOfFan, int slotOfFan, int slotOfLamp) {
            return aPlan().assignments(
                            anAssignment("fan").at(panelOfFan, slotOfFan),
                            anAssignment("lamp").at("sub", slotOfLamp),
                            anAssignment("pump").at("other", 1))
                    .build();
        }

        @Test
        void allThatItFeedsIsOffWhileItIsIsolated() {
            WorkOrder order = OrderOfWork.between(project, built, plan("main", 3, 1), 1);

            assertThat(order.breaches()).isEmpty();
            assertThat(order.stages()).singleElement().satisfies(stage -> {
                assertThat(stage.deadPanels()).containsExactly("main");
                assertThat(stage.deadBelow()).containsExactly("busbar", "sub");
                assertThat(stage.lockedOut()).containsExactly("fan");
                assertThat(stage.standingBy()).containsExactly("lamp");
            });
            assertThat(said(order, WorkStepKind.SWITCH_OFF)).containsExactly("lamp");
        }

        /** The board stands in one panel and is fed by another, as the project says. */
        @Test
        void aBoardThatItFeedsIsOffToo() {
            Project fed = project.with()
                    .boardTypes(List.of(aBoardType("T").build()))
                    .boards(List.of(aBoard("B1")
                            .type("T")
                            .in("other")
                            .with(it -> it.fedBy(Optional.of("busbar")))
                            .build()))
                    .loads(Stream.concat(
                                    project.loads().stream(),
                                    Stream.of(aLoad("amp")
                                            .amplifier()
                                            .runningAmps(2)
                                            .build()))
                            .toList())
                    .build();
            Plan before = aPlan().board("B1", 0, 1)
                    .assignments(
                            anAssignment("fan").at("main", 1),
                            anAssignment("lamp").at("sub", 1),
                            anAssignment("pump").at("other", 1),
                            anAssignment("amp").at("other", 2).on("B1", 1))
                    .build();
            Plan target = before.with()
                    .assignments(before.assignments().stream()
                            .map(each -> each.load().equals("fan") ? each.withSlot(3) : each)
                            .toList())
                    .build();

            WorkOrder order = OrderOfWork.between(fed, before, target, 1);

            assertThat(order.breaches()).isEmpty();
            assertThat(said(order, WorkStepKind.SWITCH_OFF)).containsExactlyInAnyOrder("lamp", "amp");
        }

        @Test
        void whatItFeedsIsIsolatedBeforeItAndLiveAfterIt() {
            WorkOrder order = OrderOfWork.between(project, built, plan("main", 3, 3), 2);

            assertThat(order.breaches()).isEmpty();
            assertThat(said(order, WorkStepKind.ISOLATE_PANEL)).containsSubsequence("sub", "main");
            assertThat(said(order, WorkStepKind.ENERGISE_PANEL)).containsSubsequence("main", "sub");
        }

        /** The list of that stage with some steps left out or exchanged: the replay must find it. */
        @Test
        void theReplayFindsALoadThatIsOnBelowADeadPanel() {
            Plan target = plan("main", 3, 1);
            List<WorkStep> sound = steps(OrderOfWork.between(project, built, target, 1));

            assertThat(replay(target, sound)).isEmpty();
            assertThat(replay(
                            target,
                            sound.stream()
                                    .filter(step -> step.kind() != WorkStepKind.SWITCH_OFF
                                            && step.kind() != WorkStepKind.SWITCH_ON)
                                    .toList()))
                    .anySatisfy(breach ->
                            assertThat(breach.message()).contains("'main' is isolated while load 'lamp' is on"));
            assertThat(replay(
                            target,
                            sound.stream()
                                    .filter(step -> step.kind() != WorkStepKind.ENERGISE_PANEL)
                                    .toList()))
                    .anySatisfy(breach -> assertThat(breach.message()).contains("load 'lamp' is to come on while"));
        }

        @Test
        void theReplayFindsAPanelThatIsLiveBeforeWhatFeedsIt() {
            Plan target = plan("main", 3, 3);
            List<WorkStep> sound = steps(OrderOfWork.between(project, built, target, 2));
            List<WorkStep> lower = sound.stream()
                    .filter(step -> step.kind() == WorkStepKind.ENERGISE_PANEL)
                    .filter(step -> step.panel().equals(Optional.of("sub")))
                    .toList();

            List<Breach> found = replay(
                    target,
                    sound.stream()
                            .flatMap(step -> step.kind() == WorkStepKind.MAKE_READY
                                    ? Stream.concat(Stream.of(step), lower.stream())
                                    : lower.contains(step) ? Stream.of() : Stream.of(step))
                            .toList());

            assertThat(found)
                    .anySatisfy(breach ->
                            assertThat(breach.message()).contains("'sub' is to be live again while panel 'main'"));
        }

        private List<Breach> replay(Plan target, List<WorkStep> steps) {
            return Replay.of(
                    project,
                    built,
                    target,
                    List.of(new WorkStage(
                            false, List.of(), List.of(), List.of(), List.of(), List.of(), steps, target, 0)));
        }
    }

    @Nested
    class BehindAContactor {
        private final Project project = aProject()
                .panels(
                        aPanel("P1").slots(12).ratedAmps(60),
                        aPanel("P2").slots(12).ratedAmps(60))
                .boards(aBoard("B1"))
                .loads(
                        aLoad("first").amplifier().runningAmps(5).with(it -> it.switchedBy(SwitchedBy.CONTACTOR)),
                        aLoad("second").amplifier().runningAmps(5).with(it -> it.comesWith(Optional.of("first"))),
                        aLoad("third").amplifier().runningAmps(5))
                .build();

        private Plan plan(int output) {
            return aPlan().board("B1", 0, 1)
                    .assignments(
                            anAssignment("first").at("P1", 1).on("B1", output),
                            anAssignment("second").at("P1", 2),
                            anAssignment("third").at("P2", 1).on("B1", 2))
                    .build();
        }

        @Test
        void aLoadIsOffWhileTheOneThatTheContactorIsForIs() {
            WorkOrder order = OrderOfWork.between(project, plan(1), plan(3), 1);

            assertThat(order.breaches()).isEmpty();
            List<String> off = steps(order).stream()
                    .filter(step -> step.kind() == WorkStepKind.SWITCH_OFF || step.kind() == WorkStepKind.LOCK_OUT)
                    .map(step -> step.load().orElseThrow())
                    .toList();
            assertThat(off).containsSubsequence("second", "first");
            assertThat(said(order, WorkStepKind.SWITCH_ON)).contains("second");
        }

        @Test
        void theReplayFindsOneThatIsOnWithoutIt() {
            WorkOrder order = OrderOfWork.between(project, plan(1), plan(3), 1);
            List<WorkStep> without = steps(order).stream()
                    .filter(step -> !step.load().equals(Optional.of("second")))
                    .toList();

            List<Breach> found = Replay.of(
                    project,
                    plan(1),
                    plan(3),
                    List.of(new WorkStage(
                            false, List.of(), List.of(), List.of(), List.of(), List.of(), without, plan(3), 0)));

            assertThat(found)
                    .anySatisfy(breach -> assertThat(breach.message()).contains("'second'", "'first'", "contactor"));
        }
    }

    /** Outputs of B2 have times of their own and B2 begins when B1 is done. */
    @Nested
    class WithOutputsOfTheirOwnTimes {
        private final Project project = aProject()
                .panels(aPanel("P1").slots(12).ratedAmps(60))
                .boardTypes(
                        aBoardType("stepped")
                                .outputs(4)
                                .startDelaySeconds(0, 1, 2)
                                .stepSeconds(1),
                        aBoardType("each")
                                .outputs(4)
                                .with(it -> it.timing(BoardTiming.EACH)
                                        .startDelaySeconds(List.of())
                                        .stepSeconds(List.of())
                                        .timesSeconds(Optional.of(OfferedTimes.builder()
                                                .listed(List.of(0.0, 1.0, 2.0, 3.0, 4.0))
                                                .build()))))
                .boards(aBoard("B1").type("stepped"), aBoard("B2").type("each").after("B1"))
                .loads(
                        aLoad("a").amplifier().runningAmps(5),
                        aLoad("b").amplifier().runningAmps(5),
                        aLoad("c").amplifier().runningAmps(5))
                .build();

        private Plan plan(double delay, AssignmentBuilder b, AssignmentBuilder c) {
            Plan stepped = aPlan().board("B1", delay, 1)
                    .assignments(anAssignment("a").at("P1", 1).on("B1", 1), b, c)
                    .build();
            return PlanFinisher.timed(project, stepped);
        }

        private static AssignmentBuilder b(double on) {
            return anAssignment("b").at("P1", 2).on("B2", 1).onSeconds(on);
        }

        private static AssignmentBuilder c(int output, double on) {
            return anAssignment("c").at("P1", 3).on("B2", output).onSeconds(on);
        }

        @Test
        void anOutputThatIsSetOtherwiseIsASettingAndNoMove() {
            Plan built = plan(0, b(1), c(2, 2));
            Plan target = plan(0, b(4), c(2, 2));

            Changes changes = Changes.between(new ProjectIndex(project), built, target);
            WorkOrder order = OrderOfWork.between(project, built, target, 1);

            assertThat(changes.moves()).isZero();
            assertThat(changes.times()).containsExactly(new TimeChange("b", "B2", 1, 4));
            assertThat(order.breaches()).isEmpty();
            assertThat(steps(order)).singleElement().satisfies(step -> {
                assertThat(step.kind()).isEqualTo(WorkStepKind.SET_OUTPUT);
                assertThat(step.timeSeconds()).hasValue(4);
            });
        }

        /** All of B2 comes on a second later, and nobody touches it. */
        @Test
        void aBoardBeforeItMovesItsTimesAndNotItsSettings() {
            Plan built = plan(0, b(1), c(2, 2));
            Plan target = plan(1, b(2), c(2, 3));

            Changes changes = Changes.between(new ProjectIndex(project), built, target);
            WorkOrder order = OrderOfWork.between(project, built, target, 1);

            assertThat(changes.times()).isEmpty();
            assertThat(changes.settings()).hasSize(1);
            assertThat(order.breaches()).isEmpty();
            assertThat(said(order, WorkStepKind.SET_OUTPUT)).isEmpty();
        }

        @Test
        void aLeadThatGoesToAnotherOutputHasItsTimeSetThere() {
            Plan built = plan(0, b(1), c(2, 2));
            Plan target = plan(0, b(1), c(3, 2));

            WorkOrder order = OrderOfWork.between(project, built, target, 1);

            assertThat(order.breaches()).isEmpty();
            assertThat(said(order, WorkStepKind.SET_OUTPUT)).containsExactly("c");
        }
    }

    @Nested
    class OfRandomPlants {
        /** What a state breaks that the plan as built does not, is named with the stage that leaves it so. */
        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {401, 402, 403, 404, 405, 406, 407, 408, 409, 410})
        void everyStageKeepsWhatWasKeptOrNamesWhatIsBroken(long seed) {
            Project given = AssertedSearch.plant(seed, 30);
            Plan built = Reworked.plan(given, 300);
            Project project = Reworked.raised(given, seed, 3, 0.3);

            Front front = Reworked.front(project, built, 1_500);

            Map<String, Long> before = broken(project, built);
            for (FrontPoint point :
                    List.of(front.cureOnly(), front.points().get(front.points().size() - 1))) {
                WorkOrder order = OrderOfWork.between(project, built, point.plan(), 2);
                for (int i = 0; i < order.stages().size(); i++) {
                    int stage = i + 1;
                    broken(project, order.stages().get(i).after())
                            .forEach((rule, places) -> assertThat(places <= before.getOrDefault(rule, 0L)
                                            || order.breaches().stream().anyMatch(each -> each.stage() == stage))
                                    .as("%s after stage %d: %s", rule, stage, order.breaches())
                                    .isTrue());
                }
                assertThat(order.breaches())
                        .allSatisfy(each -> assertThat(each.found().rule()).isNotEmpty());
                Plan end = order.stages().isEmpty()
                        ? built
                        : order.stages().get(order.stages().size() - 1).after();
                assertThat(Referee.judge(project, PlanFinisher.timed(project, end))
                                .metrics()
                                .objective())
                        .isEqualTo(Referee.judge(project, PlanFinisher.timed(project, point.plan()))
                                .metrics()
                                .objective());
            }
        }

        private static Map<String, Long> broken(Project project, Plan plan) {
            return Referee.judge(project, PlanFinisher.timed(project, plan)).violations().stream()
                    .collect(Collectors.groupingBy(each -> each.rule(), Collectors.counting()));
        }
    }
}
