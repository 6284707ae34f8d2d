package evenrise.model.file;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.file.Samples.onlyProblem;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Project;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class PlanFileTest {
    private static final String PLAN = """
            {"format": "evenrise-plan/1",
             "boards": [{"id": "B1", "start_delay_s": 0, "step_s": 0.5}],
             "assignments": [
               {"load": "amp", "panel": "P1", "slot": 3, "phases": ["B"], "board": "B1", "output": 1, "on_s": 0, "off_s": 0},
               {"load": "light", "panel": "P1", "slot": 1, "phases": ["A"], "board": null, "output": null, "on_s": null}
             ]}
            """;

    private final Project project = aProject().boards(aBoard("B1")).build();

    @Test
    void readsAPlanWithNulls() {
        Reading<?> reading = read(PLAN);

        assertThat(reading.problems()).isEmpty();
        assertThat(reading.value()).isPresent();
    }

    @Test
    void namesABoardThatIsSetTwice() {
        String setting = "{\"id\": \"B1\", \"start_delay_s\": 0, \"step_s\": 0.5}";

        Problem problem = onlyProblem(read(PLAN.replace(setting, setting + ", " + setting)));

        assertThat(problem.pointer()).isEqualTo("/boards/1/id");
        assertThat(problem.message()).contains("'B1' again");
    }

    @Test
    void namesABoardThatTheProjectLacks() {
        Problem problem = onlyProblem(read(PLAN.replace("\"B1\"", "\"B2\"")));

        assertThat(problem.message())
                .isEqualTo("line 2, column 20, /boards/0/id: id of board 'B2' is 'B2', expected the id of one of the "
                        + "project's boards. Maybe 'B1'.");
    }

    @Test
    void namesTheLoadOfABrokenAssignment() {
        Problem problem = onlyProblem(read(PLAN.replace("\"slot\": 3", "\"slot\": \"three\"")));

        assertThat(problem.message()).contains("slot of assignment of load 'amp' is 'three'");
    }

    /** As plans had it before findings had parts. */
    @Test
    void readsFindingsThatAreWordsAlone() {
        String old = PLAN.stripTrailing().replaceAll("}$", """
                , "violations": [{"rule": "slot", "message": "load 'amp' sticks out."}],
                 "review": {"remarks": [{"check": "breaker-trip", "grade": "breaks", "place": "amp", "message": "It trips."}]}}
                """);

        Reading<Plan> reading =
                PlanFile.read(new ByteArrayInputStream(old.getBytes(StandardCharsets.UTF_8)), "-", project);

        assertThat(reading.problems()).isEmpty();
        Plan plan = reading.value().orElseThrow();
        assertThat(plan.violations())
                .containsExactly(BrokenRule.builder()
                        .rule("slot")
                        .message("load 'amp' sticks out.")
                        .build());
        assertThat(plan.violations().get(0).subjects()).isEmpty();
        assertThat(plan.review().orElseThrow().remarks())
                .extracting(Remark::kind, Remark::cure)
                .containsExactly(tuple("", ""));
    }

    private Reading<?> read(String text) {
        return PlanFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "-", project);
    }
}
