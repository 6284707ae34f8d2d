package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchService;
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
    @TempDir
    private Path folder;

    @Test
    void keepsTheBestPlanAndEndsWith130() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Path plan = Files.writeString(folder.resolve("hall.plan.json"), "earlier");

        Process process = StandInProcess.start("plan", project.toString());
        StandInProcess.awaitASearchingLine(process);
        StandInProcess.signal(process, "INT");
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).isEqualTo(ExitCode.INTERRUPTED);
        assertThat(out).contains("Interrupted; the best plan so far is kept.", "Written: ");
        assertThat(PlanFile.read(plan).value()).isPresent();
    }

    @Test
    void leavesTheEarlierPlanWholeWhenKilled() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        Path plan = Files.writeString(folder.resolve("hall.plan.json"), "earlier");

        Process process = StandInProcess.start("plan", project.toString());
        StandInProcess.awaitASearchingLine(process);
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
            Process process = StandInProcess.start("plan", project.toString());
            StandInProcess.awaitASearchingLine(process);
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

        Process process = StandInProcess.start("plan", project.toString());
        StandInProcess.awaitASearchingLine(process);
        Files.createDirectory(plan);
        StandInProcess.signal(process, "INT");

        assertThat(process.waitFor()).isEqualTo(ExitCode.NOT_WRITTEN);
        assertThat(plan).isDirectory();
    }
}
