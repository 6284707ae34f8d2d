package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A process of its own gets the signal: what a JVM does then is part of what is tested. */
@DisabledOnOs(OS.WINDOWS)
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class InterruptionTest {
    @TempDir
    private Path folder;

    @Test
    void keepsTheBestPlanAndEndsWith130() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Path plan = Files.writeString(folder.resolve("hall.plan.json"), "earlier");

        Process process = start("plan", project.toString());
        awaitASearchingLine(process);
        signal(process, "INT");
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).isEqualTo(ExitCode.INTERRUPTED);
        assertThat(out).contains("Interrupted; the best plan so far is kept.", "Written: ");
        assertThat(PlanFile.read(plan).value()).isPresent();
    }

    @Test
    void leavesTheEarlierPlanWholeWhenKilled() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Path plan = Files.writeString(folder.resolve("hall.plan.json"), "earlier");

        Process process = start("plan", project.toString());
        awaitASearchingLine(process);
        process.destroyForcibly();
        process.waitFor();

        assertThat(plan).hasContent("earlier");
    }

    @Test
    void endsWithFiveWhenThePlanCouldNotBeWrittenInTheEnd() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Path plan = folder.resolve("hall.plan.json");

        Process process = start("plan", project.toString());
        awaitASearchingLine(process);
        Files.createDirectory(plan);
        signal(process, "INT");

        assertThat(process.waitFor()).isEqualTo(ExitCode.NOT_WRITTEN);
        assertThat(plan).isDirectory();
    }

    private static Process start(String... arguments) throws IOException {
        List<String> command = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                StandInMain.class.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).start();
    }

    private static void awaitASearchingLine(Process process) throws IOException {
        BufferedReader err =
                new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
        assertThat(err.readLine()).contains("objective 117.3");
    }

    private static void signal(Process process, String name) throws Exception {
        assertThat(new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                        .start()
                        .waitFor())
                .isZero();
    }
}
