package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The amplifier goes from slot 3 to slot 5, from output 2 to 1, from 0.75 s to 0 s; the board's delay from 0.5 to 0 s. */
class DiffCommandTest {
    @TempDir
    private Path folder;

    private String earlier;
    private String later;

    @BeforeEach
    void planTwice() throws IOException {
        String project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT)
                .toString();
        earlier = folder.resolve("earlier.plan.json").toString();
        later = folder.resolve("later.plan.json").toString();
        new Shell(SmallHall.sound()).run("plan", project, "-o", earlier);
        new Shell(SmallHall.moved()).run("plan", project, "-o", later);
    }

    private String diff(String... plans) {
        Shell.Result result = new Shell(SmallHall.sound()).run("diff", plans[0], plans[1]);
        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        return result.out();
    }

    @Test
    void tellsWhatMovedByPanelAndWhichBoardsAreSetOtherwise() {
        assertThat(diff(earlier, later))
                .contains("Of 2 loads that both plans have, 1 sit elsewhere")
                .containsPattern("amp +slot 3 B +slot 5 C +B1 2 +B1 1 +0\\.75 +0\\.0")
                .containsPattern("B1 +delay 0\\.5 s, step 0\\.25 s +delay 0\\.0 s, step 0\\.25 s")
                .containsPattern("Last switch-on +0\\.75 +0\\.00 +-0\\.75 +s");
    }

    @Test
    void tellsNothingOfEqualPlans() {
        assertThat(diff(later, later)).contains("0 sit elsewhere").doesNotContain("Panel P1", "Boards");
    }

    @Test
    void namesWhatIsNewAndWhatIsGone() throws IOException {
        Path without = Files.writeString(
                folder.resolve("without.json"),
                Files.readString(Path.of(earlier)).replace("\"load\": \"amp\"", "\"load\": \"sub\""));

        assertThat(diff(earlier, without.toString())).contains("New: sub.", "Gone: amp.");
    }
}
