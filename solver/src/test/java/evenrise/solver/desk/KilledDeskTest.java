package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The process of a desk is killed amid edits. */
@Timeout(value = 90, unit = TimeUnit.SECONDS)
class KilledDeskTest {
    @TempDir
    private Path folder;

    @Test
    void leavesWholeFilesWithWhatWasChangedBeforeAndTheFolderFree() throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "evenrise.solver.cli.Evenrise",
                        "desk",
                        Hall.in(folder).toString(),
                        "--no-open")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            Wire wire =
                    new Wire(new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))
                            .readLine());
            wire.open();
            wire.post("/api/move", "{\"load\": \"amp-1\", \"panel\": \"P2\", \"slot\": 7}");
            while (slotOf("amp-1") != 7) {
                Thread.onSpinWait();
            }
            for (int slot = 2; slot <= 12; slot += 2) {
                wire.post("/api/move", "{\"load\": \"amp-2\", \"panel\": \"P2\", \"slot\": " + slot + "}");
            }
        } finally {
            // SIGKILL: nothing of the program runs any more.
            process.destroyForcibly().waitFor();
        }

        assertThat(slotOf("amp-1")).isEqualTo(7);
        assertThat(ProjectFile.read(folder.resolve("project.json")).value()).isPresent();
        try (OpenDesk next = OpenDesk.on(folder, 0, Hall.JOBS)) {
            assertThat(next.address()).startsWith("http://127.0.0.1:");
        }
    }

    private int slotOf(String load) {
        return PlanFile.read(folder.resolve("project.plan.json")).value().orElseThrow().assignments().stream()
                .filter(each -> each.load().equals(load))
                .findFirst()
                .orElseThrow()
                .slot();
    }
}
