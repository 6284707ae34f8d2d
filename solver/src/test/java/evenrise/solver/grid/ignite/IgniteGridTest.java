package evenrise.solver.grid.ignite;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.LocalGrid;
import evenrise.solver.grid.StopSignal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Three worker processes on loopback and whoever drives them, each ended, frozen or refused in turn. */
@Tag("slow")
@Timeout(300)
@Needs("kill")
class IgniteGridTest {
    private static final int WORKERS = 3;
    private static final String SOFTWARE = "1";
    private static final String NO_KEYS = "-";

    private static Fleet fleet;
    private static Fleet.Member driver;
    private static final List<Fleet.Member> WORKERS_OF_ALL = new ArrayList<>();

    @TempDir
    private Path folder;

    private Path answers;
    private Path release;

    @BeforeAll
    static void starts() throws InterruptedException {
        fleet = new Fleet(WORKERS);
        for (int i = 0; i < WORKERS; i++) {
            WORKERS_OF_ALL.add(fleet.worker(i, SOFTWARE, NO_KEYS));
        }
        driver = fleet.driver(SOFTWARE, NO_KEYS);
        driver.await("ready");
        for (Fleet.Member each : WORKERS_OF_ALL) {
            each.await("ready");
        }
    }

    @AfterAll
    static void ends() {
        fleet.close();
    }

    @BeforeEach
    void everyWorkerIsThere() throws InterruptedException {
        for (int i = 0; i < WORKERS; i++) {
            if (!WORKERS_OF_ALL.get(i).isAlive()) {
                replace(i);
            }
        }
        WORKERS_OF_ALL.forEach(Fleet.Member::forget);
        driver.forget();
        answers = folder.resolve("answers");
        release = folder.resolve("release");
    }

    private static void replace(int number) throws InterruptedException {
        WORKERS_OF_ALL.set(number, fleet.worker(number, SOFTWARE, NO_KEYS));
        WORKERS_OF_ALL.get(number).await("ready");
    }

    private static List<String> echoes(int from, int to) {
        return IntStream.range(from, to).mapToObj(i -> "echo:" + i + ":-").toList();
    }

    private String hold(int number) {
        return "hold:" + number + ":" + release;
    }

    private String run(List<String> jobs) {
        return answers + " " + String.join(" ", jobs);
    }

    private static List<String> with(List<String> jobs, String... more) {
        return Stream.concat(Stream.of(more), jobs.stream()).toList();
    }

    private void release() throws IOException {
        Files.createFile(release);
    }

    /** Every job's bytes are those that this process makes alone, and nothing landed twice. */
    private void landedAsOnOneMachine(List<String> jobs) throws IOException {
        Map<String, String> alone = new TreeMap<>();
        List<GridJob> all = jobs.stream().map(FleetMember::job).toList();
        new LocalGrid(new FleetWork(any -> {}), 1)
                .run(
                        all,
                        (job, answer) -> alone.put(job.key() + ".answer", text(((GridAnswer.Done) answer).output())),
                        new StopSignal());
        Map<String, String> landed = new TreeMap<>();
        try (Stream<Path> files = Files.list(answers)) {
            for (Path each :
                    files.filter(file -> file.toString().endsWith(".answer")).toList()) {
                landed.put(each.getFileName().toString(), Files.readString(each));
            }
        }

        assertThat(landed).isEqualTo(alone);
        assertThat(driver.heard()).noneMatch(line -> line.startsWith("landed again"));
    }

    private static String text(byte[] bytes) {
        return new String(bytes, java.nio.charset.StandardCharsets.UTF_8);
    }

    /** The worker that has taken the job to hold. */
    private static int holder() throws InterruptedException {
        while (true) {
            for (int i = 0; i < WORKERS; i++) {
                if (WORKERS_OF_ALL.get(i).hasSaid("holding")) {
                    return i;
                }
            }
            Thread.onSpinWait();
        }
    }

    @Test
    void namesWhatAJobFailsAtAndLandsTheOthers() throws Exception {
        List<String> jobs = echoes(10, 40);

        driver.tell(run(with(jobs, "memory:1:-", "throw:2:-", "invalid:3:-")));
        driver.await("run ended");

        assertThat(driver.heard())
                .contains("failed memory 1 - OUT_OF_MEMORY", "failed throw 2 - THROWN", "failed invalid 3 - INVALID");
        landedAsOnOneMachine(jobs);
    }

    @Test
    void parksAJobThatEndsItsProcessAfterTwoWorkers() throws Exception {
        List<String> jobs = echoes(10, 20);

        driver.tell(run(with(jobs, "halt:1:-")));
        driver.await("run ended");

        assertThat(driver.heard()).contains("failed halt 1 - WORKER_LOST");
        assertThat(WORKERS_OF_ALL.stream().filter(Fleet.Member::isAlive)).hasSize(WORKERS - 2);
        landedAsOnOneMachine(jobs);
    }

    @Test
    void runsTheJobOfAWorkerThatIsKilledOnAnotherThatJoinsLate() throws Exception {
        List<String> jobs = with(echoes(10, 20), hold(1));
        driver.tell(run(jobs));
        int holder = holder();

        WORKERS_OF_ALL.get(holder).signal("KILL");
        driver.await("is lost");
        replace(holder);
        driver.await("with 1 slot");
        release();
        driver.await("run ended");

        landedAsOnOneMachine(jobs);
    }

    @Test
    void runsTheJobOfAFrozenWorkerOnAnotherAndTakesItBackWhenItThaws() throws Exception {
        List<String> jobs = with(echoes(10, 14), hold(1));
        driver.tell(run(jobs));
        Fleet.Member frozen = WORKERS_OF_ALL.get(holder());

        frozen.signal("STOP");
        driver.await("is lost");
        release();
        driver.await("run ended");
        frozen.signal("CONT");
        frozen.await("joining again");
        frozen.await("ready");

        landedAsOnOneMachine(jobs);
    }

    @Test
    void goesOnWhereADriverThatIsKilledEnded() throws Exception {
        List<String> jobs = with(echoes(10, 14), hold(1));
        Fleet.Member killed = fleet.driver(SOFTWARE, NO_KEYS);
        killed.await("ready");
        killed.tell(run(jobs));
        Fleet.Member worker = WORKERS_OF_ALL.get(holder());

        killed.signal("KILL");
        worker.await("hold stopped");
        release();
        driver.tell(run(jobs));
        driver.await("run ended");

        landedAsOnOneMachine(jobs);
    }

    @Test
    void saysThatNoWorkerIsLeftAndGoesOnWhenSomeAre() throws Exception {
        List<String> jobs = with(echoes(10, 14), hold(1));
        driver.tell(run(jobs));
        holder();

        for (Fleet.Member each : WORKERS_OF_ALL) {
            each.signal("KILL");
        }
        assertThat(driver.await("run failed")).contains("no worker answers");
        for (int i = 0; i < WORKERS; i++) {
            WORKERS_OF_ALL.get(i).awaitEnd();
        }
        everyWorkerIsThere();
        release();
        driver.tell(run(jobs));
        driver.await("run ended");

        landedAsOnOneMachine(jobs);
    }

    @Test
    void stopsWhatRunsWhenAnAnswerCannotBeKept() throws Exception {
        driver.tell(run(List.of(hold(1), "full:2:-")));
        Fleet.Member worker = WORKERS_OF_ALL.get(holder());

        assertThat(driver.await("run failed")).contains("the disk is full");
        worker.await("hold stopped");
    }

    @Test
    void refusesAnotherSoftware() throws Exception {
        Fleet.Member other = fleet.driver("2", NO_KEYS);
        other.await("ready");

        other.tell(run(echoes(10, 12)));

        assertThat(other.await("run failed")).contains("here runs 2, there runs 1");
    }
}
