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
import org.junit.jupiter.api.Test;

/** A breaker goes to another panel and stays on its output: its lead does not reach it any more. */
class DrawnLeadTest {
    private final Project project = aProject()
            .panels(aPanel("P1").slots(12).ratedAmps(60), aPanel("P2").slots(12).ratedAmps(60))
            .boards(aBoard("B1").in("P1").reaches("P1", "P2"))
            .loads(aLoad("amp").amplifier().runningAmps(3))
            .build();
    private final Plan built = plan("P1");
    private final Plan target = plan("P2");

    private static Plan plan(String panel) {
        return aPlan().board("B1", 0, 1)
                .assignments(anAssignment("amp").at(panel, 1).on("B1", 1))
                .build();
    }

    @Test
    void isAMoveAndAStepOfItsOwn() {
        WorkOrder order = OrderOfWork.between(project, built, target, 1);

        assertThat(order.breaches()).isEmpty();
        assertThat(order.stages())
                .singleElement()
                .satisfies(stage -> assertThat(stage.steps())
                        .extracting(WorkStep::kind)
                        .containsSubsequence(WorkStepKind.RE_TERMINATE, WorkStepKind.RE_LAND, WorkStepKind.ENERGISE));
    }

    @Test
    void isMissedByTheReplayWhereItIsLeftBehind() {
        List<WorkStep> without = OrderOfWork.between(project, built, target, 1).stages().get(0).steps().stream()
                .filter(step -> step.kind() != WorkStepKind.RE_LAND)
                .toList();

        List<Breach> found = Replay.of(
                project,
                built,
                target,
                List.of(new WorkStage(
                        false, List.of(), List.of(), List.of(), List.of(), List.of(), without, target, 0)));

        assertThat(found)
                .anySatisfy(breach -> assertThat(breach.message())
                        .contains("the control lead of load 'amp' runs to the panel that its breaker has left"));
    }
}
