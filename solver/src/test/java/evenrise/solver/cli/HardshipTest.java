package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.nio.file.FileSystems;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchService;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Signals at random moments and disks that are full at random places: nothing that was there is lost, no exit code is
 * that of a bug, and the next run finds nothing in its way. A sample here; {@code -Devenrise.trials=1000} for long runs.
 */
@DisabledOnOs(OS.WINDOWS)
@Tag("slow")
@Needs({"bash", "kill"})
class HardshipTest {
    private static final int TRIALS = Integer.getInteger("evenrise.trials", 1);
    private static final long SEED = Long.getLong("evenrise.seed", 1);
    private static final List<String> SIGNALS = List.of("KILL", "INT", "TERM", "HUP");

    @TempDir
    private Path scratch;

    static Stream<List<String>> commands() {
        return Hardship.COMMANDS.stream();
    }

    @ParameterizedTest
    @MethodSource("commands")
    void losesNothingWhereASignalEndsIt(List<String> command) throws Exception {
        Hardship hardship = Hardship.after(scratch.resolve("folder"), command);
        Random draw = new Random(SEED + command.hashCode());
        for (int trial : IntStream.range(0, TRIALS).toArray()) {
            String signal = SIGNALS.get((trial + draw.nextInt(SIGNALS.size())) % SIGNALS.size());
            Process process = hardship.start(List.of());
            if (trial % 2 == 0) {
                whenItWrites(process);
            } else {
                process.waitFor(draw.nextInt(1500), TimeUnit.MILLISECONDS);
            }
            signal(process, signal);
            int code = process.waitFor();

            assertThat(code).as(signal + " " + command + " " + hardship.said()).isNotEqualTo(ExitCode.BUG);
            hardship.isWhole();
            hardship.nextRunCleansUp();
            hardship.reset();
        }
    }

    /** A limit on the size of a file stands for a disk that is full: writing fails at that byte. */
    @ParameterizedTest
    @MethodSource("commands")
    void losesNothingWhereTheDiskIsFull(List<String> command) throws Exception {
        Hardship hardship = Hardship.after(scratch.resolve("folder"), command);
        Random draw = new Random(SEED + command.hashCode());
        for (int trial : IntStream.range(0, TRIALS).toArray()) {
            int kilobytes = trial + draw.nextInt(40);
            Process process =
                    hardship.start(List.of("bash", "-c", "ulimit -f " + kilobytes + "; exec \"$@\"", "limited"));
            int code = process.waitFor();

            assertThat(code)
                    .as(kilobytes + " kB " + command + " " + hardship.said())
                    .isIn(ExitCode.DONE, ExitCode.RULES_BROKEN, ExitCode.NOT_WRITTEN, 6);
            hardship.isWhole();
            hardship.nextRunCleansUp();
            hardship.reset();
        }
    }

    /** Waits until the process begins to write into its folder, or has ended. */
    private void whenItWrites(Process process) throws Exception {
        try (WatchService changes = FileSystems.getDefault().newWatchService()) {
            scratch.resolve("folder").register(changes, StandardWatchEventKinds.ENTRY_CREATE);
            while (process.isAlive() && changes.poll(20, TimeUnit.MILLISECONDS) == null) {
                assertThat(process.pid()).isPositive();
            }
        }
    }

    private static void signal(Process process, String name) throws Exception {
        new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start()
                .waitFor();
    }
}
