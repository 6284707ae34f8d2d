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
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The process of a desk is killed amid edits, or asked to end. */
@Timeout(value = 90, unit = TimeUnit.SECONDS)
class KilledDeskTest {
    @TempDir
    private Path folder;

    private Process started() throws IOException {
        return new ProcessBuilder(
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
    }

    private static Wire window(Process process) throws IOException {
        Wire wire = new Wire(
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8)).readLine());
        wire.open();
        return wire;
    }

    @Test
    void leavesWholeFilesWithWhatWasChangedBeforeAndTheFolderFree() throws IOException, InterruptedException {
        Process process = started();
        try {
            Wire wire = window(process);
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

    /** What Ctrl-C does, but for the number of the signal. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void askedToEndItWritesTheLastChangeFirst() throws IOException, InterruptedException {
        Process process = started();
        try {
            window(process).post("/api/move", "{\"load\": \"amp-1\", \"panel\": \"P2\", \"slot\": 7}");
        } finally {
            process.destroy();
        }

        assertThat(process.waitFor()).isEqualTo(128 + 15);
        assertThat(slotOf("amp-1")).isEqualTo(7);
    }

    private int slotOf(String load) {
        return PlanFile.read(folder.resolve("project.plan.json")).value().orElseThrow().assignments().stream()
                .filter(each -> each.load().equals(load))
                .findFirst()
                .orElseThrow()
                .slot();
    }
}
