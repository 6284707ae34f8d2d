package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.grid.ignite.OpenedPackages;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The program as a process of its own, from the classes that are tested. */
final class ProgramProcess {
    private static final int MILLIS_BETWEEN_LOOKS = 50;

    private ProgramProcess() {}

    /** The command line up to the program's own arguments. */
    static List<String> command() {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1"));
        command.addAll(OpenedPackages.options());
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), Evenrise.class.getName()));
        return command;
    }

    /** @param log takes what it says */
    static Process start(Path log, List<String> arguments) throws IOException {
        List<String> command = command();
        command.addAll(arguments);
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
    }

    /** Waits until a worker says that it is ready. */
    static void awaitReady(ProcessHandle worker, Path log) throws Exception {
        while (worker.isAlive() && !(Files.exists(log) && Files.readString(log).contains("ready"))) {
            TimeUnit.MILLISECONDS.sleep(MILLIS_BETWEEN_LOOKS);
        }
        assertThat(worker.isAlive())
                .as(Files.exists(log) ? Files.readString(log) : "it said nothing")
                .isTrue();
    }

    /** Below those that the system gives to others. */
    static int freePort(int from) throws IOException {
        for (int port = from; port < from + 400; port++) {
            try (ServerSocket socket = new ServerSocket(port)) {
                return socket.getLocalPort();
            } catch (IOException e) {
                // Somebody's.
            }
        }
        throw new IOException("no port is free");
    }
}
