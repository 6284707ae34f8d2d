package evenrise.solver.grid.ignite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import evenrise.model.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Drivers and where they keep what comes back: two at once, and one whose disk takes no more. */
@Tag("slow")
@Timeout(300)
@Needs({"kill", "bash"})
class GridStoreTest {
    private static final String SOFTWARE = "1";
    private static final String NO_KEYS = "-";
    private static final int BULK_BYTES = 1_000_000;

    /** Blocks of 1,024 bytes: enough for everything else that the process writes. */
    private static final String LIMIT = "ulimit -f 200";

    private static Fleet fleet;
    private static Fleet.Member worker;

    @TempDir
    private Path folder;

    @BeforeAll
    static void startsAWorker() throws InterruptedException {
        fleet = new Fleet(1);
        worker = fleet.worker(0, SOFTWARE, NO_KEYS, 2);
        worker.await("ready");
    }

    @AfterAll
    static void ends() {
        fleet.close();
    }

    @BeforeEach
    void nothingWasSaid() {
        worker.forget();
    }

    private static Fleet.Member ready(Fleet.Member driver) throws InterruptedException {
        driver.await("ready");
        return driver;
    }

    private static String echoes(int from, int to) {
        return String.join(
                " ", IntStream.range(from, to).mapToObj(i -> "echo:" + i + ":-").toList());
    }

    private String hold() {
        return "hold:1:" + folder.resolve("release");
    }

    private static List<String> answers(Path store) throws IOException {
        try (Stream<Path> files = Files.list(store)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".answer"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void servesTwoDriversAtOnceEachWithItsOwn() throws Exception {
        Fleet.Member one = ready(fleet.driver(SOFTWARE, NO_KEYS));
        Fleet.Member other = ready(fleet.driver(SOFTWARE, NO_KEYS));

        one.tell(folder.resolve("one") + " " + hold() + " " + echoes(10, 30));
        worker.await("holding");
        other.tell(folder.resolve("other") + " " + echoes(20, 40));
        other.await("run ended");
        Files.createFile(folder.resolve("release"));
        one.await("run ended");

        assertThat(answers(folder.resolve("one"))).hasSize(21);
        assertThat(answers(folder.resolve("other"))).hasSize(20);
        assertThat(Files.readString(folder.resolve("one/" + "0".repeat(62) + "25.answer")))
                .isEqualTo(Files.readString(folder.resolve("other/" + "0".repeat(62) + "25.answer")));
    }

    @Test
    void refusesASecondDriverInOneFolder() throws Exception {
        Fleet.Member one = ready(fleet.driver(SOFTWARE, NO_KEYS));
        Fleet.Member other = ready(fleet.driver(SOFTWARE, NO_KEYS));
        one.tell(folder.resolve("store") + " " + hold() + " " + echoes(10, 20));
        worker.await("holding");

        other.tell(folder.resolve("store") + " " + echoes(10, 20));

        assertThat(other.await("run failed")).contains("another driver holds the folder");
        Files.createFile(folder.resolve("release"));
        one.await("run ended");
        other.tell(folder.resolve("store") + " " + echoes(10, 21));
        other.await("run ended");
        assertThat(answers(folder.resolve("store"))).hasSize(12);
        assertThat(other.heard()).contains("landed echo 20 -").doesNotContain("landed echo 10 -");
    }

    /** The system itself refuses to write more, as where an account's share of the disk is used up. */
    @Test
    void endsWhereAnAnswerCannotBeWrittenAndGoesOnWhereItCan() throws Exception {
        Path store = folder.resolve("store");
        String jobs = echoes(10, 20) + " " + hold() + " bulk:2:" + BULK_BYTES;
        Fleet.Member limited = ready(fleet.driverAfter(LIMIT, SOFTWARE));

        limited.tell(store + " " + jobs);

        assertThat(limited.await("run failed")).containsIgnoringCase("file too large");
        worker.await("hold stopped");
        assertThat(answers(store)).doesNotContain("0".repeat(63) + "2.answer");

        Files.createFile(folder.resolve("release"));
        Fleet.Member free = ready(fleet.driver(SOFTWARE, NO_KEYS));
        free.tell(store + " " + jobs);
        free.await("run ended");
        assertThat(answers(store)).hasSize(12);
        assertThat(store.resolve("0".repeat(63) + "2.answer")).hasSize(BULK_BYTES);
    }

    /** On a small disk of its own, where the system allows to make one. */
    @Test
    void saysThatTheDiskIsFull() throws Exception {
        Path disk = Files.createDirectories(folder.resolve("disk"));
        String mounted = "mount -t tmpfs -o size=128k none " + disk;
        assumeTrue(canMount(mounted), "no disk of one's own can be made here");
        Fleet.Member small = ready(
                fleet.driverAfter("exec unshare -rm bash -c '" + mounted + " && exec \"$@\"' driver \"$@\"", SOFTWARE));

        small.tell(disk.resolve("store") + " " + hold() + " bulk:2:" + BULK_BYTES);

        assertThat(small.await("run failed")).containsIgnoringCase("no space left on device");
        worker.await("hold stopped");
    }

    private static boolean canMount(String mounted) throws IOException, InterruptedException {
        return new ProcessBuilder("bash", "-c", "unshare -rm bash -c '" + mounted + "'")
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor()
                == 0;
    }
}
