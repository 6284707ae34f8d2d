package evenrise.solver.report;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import evenrise.solver.rework.WorkStepKind;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class WorkStepTextTest {
    private static final WorkStep CHECK = new WorkStep(
            WorkStepKind.CHECK_ROTATION,
            Optional.of("hoist"),
            Optional.empty(),
            OptionalInt.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());

    private static String said(Phase... after) {
        Assignment built =
                anAssignment("hoist").at("P1", 1, Phase.A, Phase.B, Phase.C).build();
        Assignment now = anAssignment("hoist").at("P1", 3, after).build();
        Project project = aProject()
                .panels(aPanel("P1"))
                .loads(aLoad("hoist").threePole().unswitched())
                .build();
        WorkStepText text = new WorkStepText(project, List.of(built));
        text.begin(stage(List.of("P1"), List.of(), now));
        return text.say(CHECK);
    }

    private static WorkStage stage(List<String> panels, List<String> boards, Assignment after) {
        return new WorkStage(
                false,
                panels,
                boards,
                List.of(after.load()),
                List.of(),
                List.of(),
                List.of(),
                Plan.builder().assignments(List.of(after)).build(),
                0);
    }

    private static String reLanded(OptionalDouble outputVolts, List<String> deadBoards) {
        Project project = aProject()
                .panels(aPanel("P1"))
                .boards(aBoard("B1").with(board -> board.outputVolts(outputVolts)))
                .loads(aLoad("amp"))
                .build();
        Assignment built = anAssignment("amp").at("P1", 1).on("B1", 1).build();
        WorkStepText text = new WorkStepText(project, List.of(built));
        text.begin(stage(
                List.of(),
                deadBoards,
                anAssignment("amp").at("P1", 1).on("B1", 2).build()));
        return text.say(new WorkStep(
                WorkStepKind.RE_LAND,
                Optional.of("amp"),
                Optional.empty(),
                OptionalInt.empty(),
                Optional.of("B1"),
                OptionalInt.of(2),
                OptionalDouble.empty(),
                OptionalDouble.empty()));
    }

    @Test
    void tellsWhetherTheBoardWhoseLeadIsMovedIsLiveOrIsolated() {
        assertThat(reLanded(OptionalDouble.empty(), List.of("B1"))).contains("Board B1 is isolated");
        assertThat(reLanded(OptionalDouble.of(24), List.of()))
                .contains("Board B1 stays LIVE, at most 24.0 V", "Panel P1, which houses it, stays LIVE");
    }

    @Test
    void tellsWhetherTheOrderOfPhasesIsReversed() {
        assertThat(said(Phase.B, Phase.C, Phase.A))
                .startsWith("Check rotation before coupling")
                .contains("A B C", "B C A", "the same order");
        assertThat(said(Phase.A, Phase.C, Phase.B)).contains("A C B", "REVERSE", "exchange two of its conductors");
    }
}
