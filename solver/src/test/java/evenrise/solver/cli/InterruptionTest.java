package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchService;
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
@Needs("kill")
class InterruptionTest {
    private static final int PATIENCE_S = 50;
    private static final long SIGINT_BIT = 1L << 1;

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
    void losesNoMoreThanSecondsWhenKilledAndGoesOnFromThere() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Path kept = folder.resolve("hall.plan.json.checkpoint.json");

        try (WatchService changes = folder.getFileSystem().newWatchService()) {
            folder.register(changes, StandardWatchEventKinds.ENTRY_CREATE);
            Process process = start("plan", project.toString());
            awaitASearchingLine(process);
            while (!Files.exists(kept)) {
                changes.take().reset();
            }
            process.destroyForcibly();
            process.waitFor();
        }

        Plan left = PlanFile.read(kept).value().orElseThrow();
        assertThat(left.assignments()).isEqualTo(SmallHall.sound().assignments());
        Shell shell = new Shell(SmallHall.sound());
        Shell.Result resumed = shell.run("plan", project.toString(), "--resume");
        assertThat(resumed.err()).contains("goes on from", "left by a search that was cut off");
        assertThat(shell.asked.get().from()).isPresent();
        assertThat(kept).doesNotExist();
    }

    @Test
    void putsAsideWhatAKilledSearchLeftWhenNobodyResumesIt() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Files.writeString(folder.resolve("hall.plan.json.checkpoint.json"), "left");

        Shell.Result result = new Shell(SmallHall.sound()).run("plan", project.toString());

        assertThat(result.err()).contains("was cut off", "--from");
        assertThat(folder.resolve("hall.plan.json.checkpoint-before.json")).hasContent("left");
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
        List<String> command = new java.util.ArrayList<>();
        if (interruptsAreIgnored()) {
            command.addAll(List.of("env", "--default-signal=INT"));
        }
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                StandInMain.class.getName()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).start();
        // Whoever started these tests may have signals ignored, and a child that never ends would hold them for ever.
        process.onExit().orTimeout(PATIENCE_S, TimeUnit.SECONDS).exceptionally(late -> process.destroyForcibly());
        return process;
    }

    /** A shell that starts something in the background has it ignore interrupts, and its children inherit that. */
    private static boolean interruptsAreIgnored() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status)
                && Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("SigIgn:"))
                        .map(line -> Long.parseUnsignedLong(
                                line.substring("SigIgn:".length()).strip(), 16))
                        .anyMatch(ignored -> (ignored & SIGINT_BIT) != 0);
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
