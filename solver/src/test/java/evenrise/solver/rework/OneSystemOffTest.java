package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A core, a hall that needs it and an annex of its own, each in a panel: what stays on while one is worked on. */
class OneSystemOffTest {
    private final Project project = project(Overlap.ANY);
    private final Plan built = plan(1, 1, 1);

    private static Project project(Overlap overlap) {
        return aProject()
                .panels(
                        aPanel("core").slots(12).ratedAmps(60),
                        aPanel("hall").slots(12).ratedAmps(60),
                        aPanel("annex").slots(12).ratedAmps(60))
                .boards(
                        aBoard("B1").in("core").with(it -> it.system(Optional.of("core"))),
                        aBoard("B2").in("hall").with(it -> it.system(Optional.of("hall"))),
                        aBoard("B3").in("annex").with(it -> it.system(Optional.of("annex"))))
                .with(it -> it.overlap(overlap)
                        .systems(List.of(
                                SwitchedSystem.builder().id("core").build(),
                                SwitchedSystem.builder()
                                        .id("hall")
                                        .needs(List.of("core"))
                                        .build(),
                                SwitchedSystem.builder().id("annex").build())))
                .loads(
                        of("core", aLoad("brain").processing().runningAmps(2)),
                        of("hall", aLoad("desk").processing().runningAmps(2)),
                        of("hall", aLoad("amp").amplifier().runningAmps(3)),
                        of("annex", aLoad("mixer").processing().runningAmps(2)),
                        of("annex", aLoad("horn").amplifier().runningAmps(3))
                                .with(it -> it.switchedBy(SwitchedBy.CONTACTOR)),
                        aLoad("tweeter").amplifier().runningAmps(1).with(it -> it.comesWith(Optional.of("horn"))))
                .build();
    }

    private static LoadBuilder of(String system, LoadBuilder load) {
        return load.with(it -> it.system(Optional.of(system)));
    }

    private static Plan plan(int brain, int desk, int mixer) {
        return aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .board("B3", 0, 1)
                .assignments(
                        anAssignment("brain").at("core", brain).on("B1", 1),
                        anAssignment("desk").at("hall", desk).on("B2", 1),
                        anAssignment("amp").at("hall", 2).on("B2", 2),
                        anAssignment("mixer").at("annex", mixer).on("B3", 1),
                        anAssignment("horn").at("annex", 2).on("B3", 2),
                        anAssignment("tweeter").at("annex", 5))
                .build();
    }

    private static List<WorkStep> commands(WorkOrder order) {
        return order.stages().stream()
                .flatMap(stage -> stage.steps().stream())
                .filter(step -> step.kind() == WorkStepKind.SYSTEM_OFF || step.kind() == WorkStepKind.SYSTEM_ON)
                .toList();
    }

    /** What is behind a contactor states no system: it is of that of the load that the contactor is for. */
    @Test
    void onlyTheSystemThatIsWorkedOnIsOff() {
        WorkOrder order = OrderOfWork.between(project, built, plan(1, 1, 3), 1);

        assertThat(order.breaches()).isEmpty();
        assertThat(order.stages()).singleElement().satisfies(stage -> {
            assertThat(stage.systemsOff()).containsExactly("annex");
            assertThat(stage.isSystemOff()).isFalse();
            assertThat(stage.standingBy()).isEmpty();
        });
        assertThat(commands(order)).extracting(WorkStep::system).containsOnly(Optional.of("annex"));
    }

    @Test
    void withASystemAllThatNeedItAreOffBeforeItAndOnAfterIt() {
        WorkOrder order = OrderOfWork.between(project, built, plan(3, 1, 1), 1);

        assertThat(order.breaches()).isEmpty();
        assertThat(commands(order))
                .extracting(step -> step.kind() + " " + step.system().orElseThrow())
                .containsExactly("SYSTEM_OFF hall", "SYSTEM_OFF core", "SYSTEM_ON core", "SYSTEM_ON hall");
        assertThat(order.cost().systemOffs()).isEqualTo(2);
    }

    /** Peaks of systems that start together are judged for all of them at once. */
    @Test
    void systemsThatStartTogetherAreOffTogether() {
        WorkOrder order = OrderOfWork.between(project(Overlap.TOGETHER), built, plan(1, 1, 3), 1);

        assertThat(order.breaches()).isEmpty();
        assertThat(order.stages()).singleElement().matches(WorkStage::isSystemOff);
        assertThat(commands(order)).extracting(WorkStep::system).containsOnly(Optional.empty());
    }

    @Test
    void theReplayFindsASystemThatIsOnWithoutTheOneItNeeds() {
        Plan target = plan(3, 1, 1);
        List<WorkStep> sound = OrderOfWork.between(project, built, target, 1).stages().stream()
                .flatMap(stage -> stage.steps().stream())
                .toList();

        List<WorkStep> withoutHall = sound.stream()
                .filter(step -> !step.system().equals(Optional.of("hall")))
                .toList();

        assertThat(replay(target, sound)).isEmpty();
        assertThat(replay(target, withoutHall))
                .anySatisfy(breach -> assertThat(breach.message()).contains("'amp'", "'core'", "needs"));
    }

    @Test
    void theReplayFindsALoadThatNoCommandTookOff() {
        Plan target = plan(1, 1, 3);
        List<WorkStep> steps = OrderOfWork.between(project, built, target, 1).stages().stream()
                .flatMap(stage -> stage.steps().stream())
                .toList();
        List<WorkStep> wrong = Stream.concat(
                        Stream.of(WorkStep.system(WorkStepKind.SYSTEM_OFF, "hall")),
                        steps.stream().skip(1))
                .toList();

        assertThat(replay(target, wrong))
                .anySatisfy(breach -> assertThat(breach.message()).contains("isolated while load 'horn' is on"));
    }

    private List<Breach> replay(Plan target, List<WorkStep> steps) {
        return Replay.of(
                project,
                built,
                target,
                List.of(new WorkStage(false, List.of(), List.of(), List.of(), List.of(), List.of(), steps, target, 0)));
    }
}
