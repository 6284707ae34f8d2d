package evenrise.solver.app;

import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.plan.Plan;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One project by many seeds, with a search that finds by its seed what the test says. */
class SeedsJobTest {
    private static final String PROJECT = """
        {
          "format": "evenrise-project/1",
          "name": "Small hall",
          "supply": {"system": "three-phase", "line_to_neutral_v": 120, "frequency_hz": 60, "rated_a": 400},
          "panels": [{"id": "P1", "slots": 12, "rated_a": 225}],
          "board_types": [{"id": "eight", "outputs": 8, "start_delay_s": [0, 0.5], "step_s": [0.25, 0.5], "price": 0}],
          "boards": [{"id": "B1", "type": "eight", "panel": "P1"}],
          "loads": [
            {"id": "dsp", "role": "processing", "breaker_a": 20, "switched": false, "running_a": 10},
            {"id": "amp", "role": "amplifier", "breaker_a": 32, "running_a": 20, "inrush_peak_a": 100}
          ]
        }
        """;

    @TempDir
    private Path folder;

    private Path project;
    private final List<Long> searched = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final CancelSwitch cancel = new CancelSwitch();
    private boolean cancelsAfterTheFirst;

    @BeforeEach
    void aProject() throws IOException {
        project = Files.writeString(folder.resolve("hall.project.json"), PROJECT);
    }

    /** Keeps every rule; the fewer seconds the better. */
    private static Plan sound(double startDelaySeconds) {
        return aPlan().board("B1", startDelaySeconds, 0.25)
                .assignments(
                        anAssignment("dsp").at("P1", 1),
                        anAssignment("amp").at("P1", 3).on("B1", 2))
                .build();
    }

    /** Leaves the amplifier out. */
    private static Plan broken() {
        return aPlan().board("B1", 0.5, 0.25)
                .assignments(anAssignment("dsp").at("P1", 1))
                .build();
    }

    private PlanRequest request(int first, int last) {
        return PlanRequest.of(project)
                .withEffort(Effort.ofMoves(50).withThreads(1))
                .withTarget(PlanTarget.besides(project))
                .withManySeeds(new ManySeeds(Optional.of(new PortfolioRequest.Seeds(first, last)), Optional.empty()));
    }

    private PlanResult run(PlanRequest request, Function<Long, Plan> found) {
        JobListener listener = new JobListener() {
            @Override
            public void progress(JobProgress progress) {}

            @Override
            public void note(String text) {
                notes.add(text);
            }

            @Override
            public void part(JobPart part) {
                if (cancelsAfterTheFirst) {
                    cancel.cancel();
                }
            }
        };
        return new Jobs((asked, progress, note) -> search(asked, found))
                .plan(request, new JobControl(listener, cancel));
    }

    private PlannerSource.Search search(PlanningRequest asked, Function<Long, Plan> found) {
        return new PlannerSource.Search() {
            @Override
            public PlanningOutcome plan() {
                searched.add(asked.seed());
                return new PlanningOutcome(found.apply(asked.seed()), 50, 0.1, OptionalDouble.empty());
            }

            @Override
            public void stop() {}
        };
    }

    private Path answers() {
        return folder.resolve("hall.plan.json.answers");
    }

    @Test
    void takesThePlanOfTheSeedThatFoundTheBest() {
        PlanResult result = run(request(1, 4), seed -> seed == 3 ? sound(0) : seed == 1 ? broken() : sound(0.5));

        assertThat(searched).containsExactly(1L, 2L, 3L, 4L);
        assertThat(result.search().seed()).isEqualTo(3);
        assertThat(result.plan().madeBy().orElseThrow().seed()).isEqualTo(3);
        assertThat(result.search().outlook().orElseThrow())
                .startsWith("The best of 4 plans is that of seed 3. 3 keep every hard rule, with objectives from ");
        assertThat(folder.resolve("hall.plan.json")).isRegularFile();
        assertThat(answers()).doesNotExist();
    }

    @Test
    void takesTheFirstOfEquals() {
        assertThat(run(request(5, 7), seed -> sound(0)).search().seed()).isEqualTo(5);
    }

    @Test
    void goesOnWhereItWasCutOff() {
        cancelsAfterTheFirst = true;
        PlanResult cut = run(request(1, 3), seed -> sound(0.5));

        assertThat(cut.search().wasCancelled()).isTrue();
        assertThat(cut.search().outlook().orElseThrow()).contains("The best of 1 plan (of 3 asked for)");
        assertThat(answers()).isDirectory();

        searched.clear();
        PlanResult whole = new Jobs((asked, progress, note) -> search(asked, seed -> sound(0)))
                .plan(request(1, 3), JobControl.NONE);

        assertThat(searched).containsExactly(2L, 3L);
        assertThat(whole.search().seed()).isEqualTo(2);
        assertThat(answers()).doesNotExist();
    }

    @Test
    void namesASeedThatFailsAndTakesTheOthers() {
        PlanResult result = run(request(1, 2), seed -> {
            if (seed == 1) {
                throw new IllegalStateException("broke down");
            }
            return sound(0);
        });

        assertThat(result.search().seed()).isEqualTo(2);
        assertThat(notes)
                .anySatisfy(note -> assertThat(note)
                        .startsWith("seed 1: unexpected failure: ")
                        .contains("broke down")
                        .endsWith("The same command tries it again."));
        assertThat(answers()).isDirectory();
    }

    @Test
    void writesNothingWhereNoSearchHasEnded() {
        cancel.cancel();

        assertThatThrownBy(() -> run(request(1, 2), seed -> sound(0)))
                .isInstanceOfSatisfying(
                        JobFailed.class, failure -> assertThat(failure.reason()).isEqualTo(JobFailed.Reason.CANCELLED));
        assertThat(folder.resolve("hall.plan.json")).doesNotExist();
    }

    @Test
    void refusesWhatWouldMakePlansDepend() {
        for (PlanRequest each : List.of(
                request(1, 2).withEffort(Effort.ofTime(Duration.ofSeconds(1))),
                request(1, 2).withResuming(true),
                request(1, 2).withPatience(new Patience(OptionalDouble.of(2), Optional.empty())),
                request(1, 2).withTarget(PlanTarget.stream(new ByteArrayOutputStream())))) {
            assertThatThrownBy(() -> run(each, seed -> sound(0)))
                    .isInstanceOfSatisfying(
                            JobFailed.class,
                            failure -> assertThat(failure.reason()).isEqualTo(JobFailed.Reason.REQUEST));
        }
        assertThat(searched).isEmpty();
    }
}
