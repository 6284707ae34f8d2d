package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The program in a process of its own, with a search that goes on until it is stopped. */
final class StandInProcess {
    private static final int PATIENCE_S = 50;
    private static final long SIGINT_BIT = 1L << 1;

    private StandInProcess() {}

    static Process start(String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
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

    static void awaitASearchingLine(Process process) {
        BufferedReader err =
                new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
        assertThat(err.lines().anyMatch(line -> line.contains("objective 117.3")))
                .as("a line of progress, after any that say that it reads yet")
                .isTrue();
    }

    static void signal(Process process, String name) throws Exception {
        assertThat(new ProcessBuilder("kill", "-" + name, Long.toString(process.pid()))
                        .start()
                        .waitFor())
                .isZero();
    }
}
