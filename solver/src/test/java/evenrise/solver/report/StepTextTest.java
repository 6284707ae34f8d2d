package evenrise.solver.report;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Phase;
import evenrise.solver.rework.StepKind;
import evenrise.solver.rework.WorkStep;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class StepTextTest {
    private static final WorkStep CHECK = new WorkStep(
            StepKind.CHECK_ROTATION,
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
        return new StepText(List.of(aLoad("hoist").threePole().build()), List.of(built))
                .say(CHECK, Map.of("hoist", now));
    }

    @Test
    void tellsWhetherTheOrderOfPhasesIsReversed() {
        assertThat(said(Phase.B, Phase.C, Phase.A))
                .startsWith("Check rotation before coupling")
                .contains("A B C", "B C A", "the same order");
        assertThat(said(Phase.A, Phase.C, Phase.B)).contains("A C B", "REVERSE", "exchange two of its conductors");
    }
}
