package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The packed jar as worker and as driver: plans and trials are those of one machine, byte for byte. */
@DisabledOnOs(OS.WINDOWS)
@Tag("slow")
@Timeout(300)
class PackagedGridIT {
    private static final Path JAR = Path.of("target", "evenrise.jar").toAbsolutePath();
    private static final int JUST_TERMINATED = 143;

    @TempDir
    private Path folder;

    private final List<Process> processes = new ArrayList<>();

    @AfterEach
    void ends() {
        processes.forEach(Process::destroyForcibly);
    }

    @Test
    void worksForOthersAndChangesNothing() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
        String hosts = "127.0.0.1:" + freePort();
        Process worker = worker(hosts);

        List<String> asked = List.of("portfolio", project.toString(), "--seeds", "1..3", "--moves", "200");
        int far = ends(with(asked, "-o", at("far"), "--grid", hosts));
        int near = ends(with(asked, "-o", at("near")));

        assertThat(far).as(said()).isEqualTo(near);
        assertThat(answers("far")).hasSize(3).isEqualTo(answers("near"));

        String plan = at("near/hall.as-is.plan.json");
        List<String> trials = List.of("rehearse", project.toString(), plan, "--trials", "250000", "--trace");
        ends(with(trials, at("far.json"), "--grid", hosts));
        ends(with(trials, at("near.json")));

        assertThat(folder.resolve("far.json")).hasSameTextualContentAs(folder.resolve("near.json"));

        worker.destroy();
        assertThat(worker.waitFor()).isEqualTo(JUST_TERMINATED);
    }

    @Test
    void saysThatNoWorkerAnswers() throws Exception {
        Path project = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);

        int code = ends(List.of("portfolio", project.toString(), "-o", at("out"), "--grid", "127.0.0.1:" + freePort()));

        assertThat(code).isEqualTo(ExitCode.NO_WORKER);
        assertThat(said()).contains("no worker answers at 127.0.0.1", "the same command goes on");
    }

    @Test
    void joinsNothingOutsideThisMachineWithoutKeys() throws Exception {
        assertThat(ends(List.of("worker", "--join", "192.0.2.1"))).isEqualTo(ExitCode.NO_WORKER);
        assertThat(said()).contains("without keys nothing is joined outside this machine");
    }

    private Process worker(String hosts) throws Exception {
        String port = hosts.substring(hosts.indexOf(':') + 1);
        Path log = folder.resolve("worker.txt");
        Process worker = start(log, List.of("worker", "--join", hosts, "--port", port, "--slots", "2"));
        while (worker.isAlive() && !Files.readString(log).contains("ready")) {
            worker.waitFor(50, TimeUnit.MILLISECONDS);
        }
        assertThat(worker.isAlive()).as(Files.readString(log)).isTrue();
        return worker;
    }

    private int ends(List<String> arguments) throws Exception {
        return start(folder.resolve("said.txt"), arguments).waitFor();
    }

    private Process start(Path log, List<String> arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-jar",
                JAR.toString()));
        command.addAll(arguments);
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        processes.add(process);
        return process;
    }

    private String said() throws IOException {
        return Files.readString(folder.resolve("said.txt")).replaceAll("\\s+", " ");
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private static List<String> with(List<String> arguments, String... more) {
        return Stream.concat(arguments.stream(), Stream.of(more)).toList();
    }

    private Map<String, String> answers(String name) throws IOException {
        Map<String, String> answers = new TreeMap<>();
        try (Stream<Path> files = Files.list(folder.resolve(name).resolve("answers"))) {
            for (Path each :
                    files.filter(file -> file.toString().endsWith(".plan.json")).toList()) {
                answers.put(each.getFileName().toString(), Files.readString(each));
            }
        }
        return answers;
    }

    /** Below those that the system gives to others. */
    private static int freePort() throws IOException {
        for (int port = 26_000; port < 27_000; port++) {
            try (ServerSocket socket = new ServerSocket(port)) {
                return socket.getLocalPort();
            } catch (IOException e) {
                // Somebody's.
            }
        }
        throw new IOException("no port is free");
    }
}
