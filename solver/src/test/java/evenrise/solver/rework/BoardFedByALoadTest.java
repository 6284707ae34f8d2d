package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A board has its supply from a circuit of its own, in another panel: whoever opens that takes off what the board switches. */
class BoardFedByALoadTest {
    private final Project project = aProject()
            .panels(aPanel("P1").slots(12).ratedAmps(60), aPanel("P2").slots(12).ratedAmps(60))
            .boards(aBoard("B1").in("P1").with(it -> it.fedBy(Optional.of("control"))))
            .loads(
                    aLoad("control").unswitched().runningAmps(1),
                    aLoad("light").unswitched().runningAmps(2),
                    aLoad("amp").amplifier().runningAmps(3),
                    aLoad("horn").amplifier().runningAmps(3))
            .build();
    private final Plan built = plan(1, 2);

    private static Plan plan(int slotOfControl, int slotOfLight) {
        return aPlan().board("B1", 0, 1)
                .assignments(
                        anAssignment("control").at("P2", slotOfControl),
                        anAssignment("light").at("P2", slotOfLight),
                        anAssignment("amp").at("P1", 1).on("B1", 1),
                        anAssignment("horn").at("P1", 2).on("B1", 2))
                .build();
    }

    private static List<WorkStep> steps(WorkOrder order) {
        return order.stages().stream().flatMap(stage -> stage.steps().stream()).toList();
    }

    private static List<String> said(WorkOrder order, WorkStepKind... kinds) {
        return steps(order).stream()
                .filter(step -> List.of(kinds).contains(step.kind()))
                .map(step -> step.load().orElseThrow())
                .toList();
    }

    @Test
    void itsLoadsAreOffWhileThatCircuitIsWorkedOn() {
        WorkOrder order = OrderOfWork.between(project, built, plan(3, 2), 1);

        assertThat(order.breaches()).isEmpty();
        assertThat(order.stages())
                .singleElement()
                .satisfies(stage -> assertThat(stage.standingBy()).containsExactlyInAnyOrder("light", "amp", "horn"));
    }

    @Test
    void theyAreOffAlsoWhereItsPanelIsIsolatedForAnother() {
        WorkOrder order = OrderOfWork.between(project, built, plan(1, 4), 1);

        assertThat(order.breaches()).isEmpty();
        assertThat(said(order, WorkStepKind.SWITCH_OFF, WorkStepKind.LOCK_OUT))
                .containsSubsequence("amp", "control")
                .containsSubsequence("horn", "control");
        assertThat(said(order, WorkStepKind.SWITCH_ON, WorkStepKind.ENERGISE))
                .containsSubsequence("control", "amp")
                .containsSubsequence("control", "horn");
    }

    @Test
    void theReplayFindsALoadThatIsOnByABoardWithoutSupply() {
        Plan target = plan(3, 2);
        List<WorkStep> without = steps(OrderOfWork.between(project, built, target, 1)).stream()
                .filter(step -> !step.load().equals(Optional.of("amp")))
                .toList();

        List<Breach> found = Replay.of(
                project,
                built,
                target,
                List.of(new WorkStage(
                        false, List.of(), List.of(), List.of(), List.of(), List.of(), without, target, 0)));

        assertThat(found).anySatisfy(breach -> assertThat(breach.message()).contains("'amp'", "'control'", "feeds"));
    }
}
