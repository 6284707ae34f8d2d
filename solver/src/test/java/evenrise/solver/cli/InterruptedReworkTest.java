package evenrise.solver.cli;

import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.Format;
import evenrise.model.file.KeptFile;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.solver.rework.KeptRework;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchService;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A rework that ends before its time keeps what it has found, and the next one goes on from that. */
class InterruptedReworkTest {
    @TempDir
    private Path folder;

    private Path project;
    private Path built;
    private Path out;
    private Path kept;

    @BeforeEach
    void writeTheHallAsBuilt() throws Exception {
        project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        built = folder.resolve("built.plan.json");
        PlanFile.write(SmallHall.moved(), built, Format.JSON);
        out = folder.resolve("out");
        kept = out.resolve("rework.checkpoint.json");
    }

    private String[] rework(String... more) {
        List<String> words = new ArrayList<>(
                List.of("rework", project.toString(), built.toString(), "-o", out.toString(), "--threads", "1"));
        words.addAll(List.of(more));
        return words.toArray(String[]::new);
    }

    private Shell.Result run(String... more) {
        return new Shell(SmallHall.sound()).run(rework(more));
    }

    private void keep(String projectFile, List<Plan> plans) throws Exception {
        String sha256 = ProjectFile.read(Path.of(projectFile)).sha256();
        Files.createDirectories(out);
        KeptFile.write(KeptRework.of(sha256, PlanFile.read(built).sha256(), plans), kept);
    }

    private KeptRework left() {
        Reading<KeptRework> read = KeptFile.read(kept, KeptRework.class, "kept", KeptRework.FORMAT);
        assertThat(read.problems()).isEmpty();
        return read.value().orElseThrow();
    }

    private static List<List<Integer>> slots(KeptRework kept) {
        return kept.plans().stream()
                .map(plan -> plan.assignments().stream().map(Assignment::slot).toList())
                .toList();
    }

    @Nested
    @DisabledOnOs(OS.WINDOWS)
    @Timeout(value = 60, unit = TimeUnit.SECONDS)
    @Needs("kill")
    class InAProcess {
        @Test
        void losesNoMoreThanSecondsWhenKilledAndGoesOnFromThere() throws Exception {
            Files.createDirectories(out);
            try (WatchService changes = folder.getFileSystem().newWatchService()) {
                out.register(changes, StandardWatchEventKinds.ENTRY_CREATE);
                Process process = StandInProcess.start(rework("--time", "10m"));
                StandInProcess.awaitASearchingLine(process);
                while (!Files.exists(kept)) {
                    changes.take().reset();
                }
                process.destroyForcibly();
                process.waitFor();
            }

            assertThat(slots(left()))
                    .as("as built, and what the search has found")
                    .contains(List.of(1, 5), List.of(1, 3));
            Shell shell = new Shell(SmallHall.sound());
            Shell.Result resumed = shell.run(rework("--moves", "200", "--resume"));
            assertThat(resumed.err()).contains("goes on from 2 plans in", "left by a rework that was cut off");
            assertThat(resumed.code()).isEqualTo(ExitCode.DONE);
            assertThat(shell.asked.get().improves()).isTrue();
            assertThat(out.resolve("front.json")).exists();
            assertThat(kept).doesNotExist();
        }

        @Test
        void writesWhatItHasWhenInterruptedAndCanGoOnAllTheSame() throws Exception {
            Process process = StandInProcess.start(rework("--time", "10m"));
            StandInProcess.awaitASearchingLine(process);
            StandInProcess.signal(process, "INT");

            assertThat(process.waitFor()).isEqualTo(ExitCode.INTERRUPTED);
            assertThat(out.resolve("front.json")).exists();
            assertThat(slots(left())).contains(List.of(1, 3));
        }
    }

    @Test
    void leavesNothingBehindWhenItEndsByItself() {
        assertThat(run("--moves", "200").code()).isEqualTo(ExitCode.DONE);

        assertThat(kept).doesNotExist();
        assertThat(out.resolve("front.json")).exists();
    }

    @Test
    void putsAsideWhatACutOffOneLeftWhenNobodyResumesIt() throws Exception {
        keep(project.toString(), List.of(SmallHall.sound()));
        byte[] bytes = Files.readAllBytes(kept);

        Shell.Result result = run("--moves", "200");

        assertThat(result.err()).contains("was cut off", "rename it to 'rework.checkpoint.json'", "--resume");
        assertThat(out.resolve("rework.checkpoint-before.json")).hasBinaryContent(bytes);
        assertThat(kept).doesNotExist();
    }

    @Test
    void refusesToGoOnFromAnotherPlanAsBuilt() throws Exception {
        keep(project.toString(), List.of(SmallHall.sound()));
        PlanFile.write(SmallHall.broken(), built, Format.JSON);

        Shell.Result result = run("--moves", "200", "--resume");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("is of another project or another plan as built");
        assertThat(kept).exists();
    }

    @Test
    void refusesAFileThatWasCutShort() throws Exception {
        keep(project.toString(), List.of(SmallHall.sound()));
        String text = Files.readString(kept);
        Files.writeString(kept, text.substring(0, text.length() / 2));

        Shell.Result result = run("--moves", "200", "--resume");

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("cannot be gone on from");
    }

    @Test
    void saysWhereThereIsNothingToGoOnFrom() {
        assertThat(run("--moves", "200", "--resume").err()).contains("no rework into this folder was cut off");
    }

    @Test
    void refusesToGoOnTowardsAPlanThatIsGiven() {
        Shell.Result result = run("--moves", "200", "--resume", "--to", built.toString());

        assertThat(result.err()).contains("Give --to or --resume, not both");
    }

    @Test
    void keepsThePlansOfFewestMovesAndTheLastWhereThereAreTooMany() {
        List<Plan> many = IntStream.rangeClosed(1, 500)
                .mapToObj(slot ->
                        aPlan().assignments(anAssignment("dsp").at("P1", slot)).build())
                .toList();

        List<Integer> slots = KeptRework.of("", "", many).plans().stream()
                .map(plan -> plan.assignments().get(0).slot())
                .toList();

        assertThat(slots).hasSize(40).startsWith(1, 2, 3).endsWith(500).isSorted();
    }
}
