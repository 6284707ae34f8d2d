package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.app.JobProgress;
import evenrise.solver.app.SearchStanding;
import evenrise.solver.app.Stage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ProgressLogTest {
    private static final Optional<SearchStanding> FOUND = Optional.of(new SearchStanding(10, 100, 90, 1, 0, 0));

    private final ByteArrayOutputStream text = new ByteArrayOutputStream();
    private final ProgressLog log = new ProgressLog(new Terminal(
            new ByteArrayInputStream(new byte[0]),
            new ByteArrayOutputStream(),
            text,
            StandardCharsets.UTF_8,
            false,
            false,
            false));

    @Test
    void writesEverMoreSeldom() {
        for (int fifth = 0; fifth < 5 * 600; fifth++) {
            log.progress(new JobProgress(Stage.SEARCHING, fifth / 5.0, FOUND));
        }

        // Gaps of 1, 1.6, 2.6, … s up to a minute each: some nine until a minute, then one a minute.
        assertThat(said().lines().count()).isBetween(15L, 22L);
    }

    @Test
    void isSilentUntilThereIsAPlan() {
        log.progress(new JobProgress(Stage.SEARCHING, 3, Optional.empty()));

        assertThat(said()).isEmpty();
    }

    @Test
    void saysWhatElseTakesAWhileAfterTheSearch() {
        log.progress(new JobProgress(Stage.SEARCHING, 0, FOUND));
        log.progress(new JobProgress(Stage.BOUNDS, 30, FOUND));
        log.progress(new JobProgress(Stage.WRITING, 30.2, FOUND));
        log.progress(new JobProgress(Stage.WRITING, 31.4, FOUND));
        log.ended(new JobProgress(Stage.WRITING, 31.6, FOUND));

        assertThat(said().lines())
                .satisfiesExactly(
                        first -> assertThat(first).startsWith(" 0:00  objective 100.0"),
                        second -> assertThat(second).isEqualTo(" 0:31  writing"),
                        last -> assertThat(last).startsWith(" 0:31  objective 100.0"));
    }

    @Test
    void saysNothingOfAJobThatIsSoonDone() {
        log.progress(new JobProgress(Stage.READING, 0, Optional.empty()));
        log.progress(new JobProgress(Stage.BOUNDS, 9.9, Optional.empty()));
        log.ended(new JobProgress(Stage.WRITING, 10.2, Optional.empty()));

        assertThat(said()).isEmpty();
    }

    @Test
    void saysWhatTakesLongWithoutASearch() {
        log.progress(new JobProgress(Stage.BOUNDS, 2, Optional.empty()));
        log.progress(new JobProgress(Stage.BOUNDS, 12, Optional.empty()));

        assertThat(said()).isEqualTo(String.format(" 0:12  proving what no plan can stay below%n"));
    }

    private String said() {
        return text.toString(StandardCharsets.UTF_8);
    }
}
