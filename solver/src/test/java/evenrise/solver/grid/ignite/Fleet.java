package evenrise.solver.grid.ignite;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** Processes on this machine's loopback, at ports of their own. */
final class Fleet implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 120;

    private final List<String> options;
    private final List<Process> processes = new ArrayList<>();
    private final List<Integer> ports = new ArrayList<>();

    /** @param members ports that are joined */
    Fleet(int members) {
        this(members, List.of("-XX:TieredStopAtLevel=1"));
    }

    /** @param options for Java */
    Fleet(int members, List<String> options) {
        this.options = options;
        for (int i = 0; i < members; i++) {
            ports.add(freePort());
        }
    }

    /** One process, and what it says. */
    static final class Member {
        private final Process process;
        private final BlockingQueue<String> said = new LinkedBlockingQueue<>();
        private final List<String> all = new ArrayList<>();

        private Member(Process process) {
            this.process = process;
            Thread reader = new Thread(() -> {
                try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
                    lines.lines().forEach(said::add);
                } catch (IOException | UncheckedIOException e) {
                    said.add("gone");
                }
            });
            reader.setDaemon(true);
            reader.start();
        }

        /** The first line from here on that holds a word; fails where none comes. */
        String await(String word) throws InterruptedException {
            String line = said.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
            while (line != null) {
                all.add(line);
                if (line.contains(word)) {
                    return line;
                }
                line = said.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
            }
            throw new AssertionError("never said '" + word + "': " + all);
        }

        /** Whether it has said something since somebody last waited for it; takes no line from who waits later. */
        boolean hasSaid(String word) {
            return said.stream().anyMatch(line -> line.contains(word));
        }

        /** What it has said until now counts no more. */
        void forget() {
            said.clear();
            all.clear();
        }

        /** What it said until now, as far as somebody waited for it. */
        List<String> heard() {
            return all;
        }

        void tell(String line) {
            try {
                process.getOutputStream().write((line + "\n").getBytes(StandardCharsets.UTF_8));
                process.getOutputStream().flush();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        void signal(String signal) throws IOException, InterruptedException {
            new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid()))
                    .inheritIO()
                    .start()
                    .waitFor();
        }

        void awaitEnd() throws InterruptedException {
            if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                throw new AssertionError("still there: " + all);
            }
        }

        /** Of the processor, until now. */
        Duration cpu() {
            return process.info().totalCpuDuration().orElseThrow();
        }

        boolean isAlive() {
            return process.isAlive();
        }
    }

    Member worker(int number, String software, String keys) {
        return worker(number, software, keys, 1);
    }

    Member worker(int number, String software, String keys, int slots) {
        return start("worker", hosts(), software, keys, Integer.toString(ports.get(number)), Integer.toString(slots));
    }

    Member driver(String software, String keys) {
        return start("driver", hosts(), software, keys);
    }

    /** @param shell what a shell does before the driver takes its place, such as to set limits */
    Member driverAfter(String shell, String software) {
        return start(List.of("bash", "-c", shell + "; exec \"$@\"", "driver"), "driver", hosts(), software, "-");
    }

    private String hosts() {
        return String.join(",", ports.stream().map(port -> "127.0.0.1:" + port).toList());
    }

    private Member start(String... arguments) {
        return start(List.of(), arguments);
    }

    private Member start(List<String> before, String... arguments) {
        List<String> command = new ArrayList<>(before);
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-Xmx160m", "-XX:+UseSerialGC", "-XX:-UsePerfData"));
        command.addAll(options);
        command.addAll(OpenedPackages.options());
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), FleetMember.class.getName()));
        command.addAll(List.of(arguments));
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            processes.add(process);
            return new Member(process);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Below those that the system gives to others, and with room for the ports beside it. */
    private static int freePort() {
        for (int tries = 0; tries < 1_000; tries++) {
            int port = 28_000
                    + (int) ((ProcessHandle.current().pid() * 37 + tries * 211L + System.nanoTime() / 1_000) % 3_900);
            try (ServerSocket socket = new ServerSocket(port)) {
                return socket.getLocalPort();
            } catch (IOException e) {
                // Somebody's.
            }
        }
        throw new IllegalStateException("no port is free");
    }

    @Override
    public void close() {
        processes.forEach(Process::destroyForcibly);
    }
}
