package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.KeysRequest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The scripts of docs/grid as they are, with this machine in the place of those that ssh and srun would reach. */
@Tag("slow")
@Timeout(300)
@Needs("bash")
class GridScriptsTest {
    private static final Path SCRIPTS = Path.of("..", "docs", "grid").toAbsolutePath();

    @TempDir
    private Path folder;

    private Path home;
    private Path bin;

    @BeforeEach
    void aMachineWithTheProgram() throws IOException {
        home = Files.createDirectories(folder.resolve("home"));
        bin = Files.createDirectories(folder.resolve("bin"));
        String program =
                ProgramProcess.command().stream().map(word -> "'" + word + "'").collect(Collectors.joining(" "));
        script(Files.createDirectories(home.resolve("bin")).resolve("evenrise"), "exec " + program + " \"$@\"");
        script(bin.resolve("evenrise"), "exec '" + home.resolve("bin/evenrise") + "' \"$@\"");
        Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT);
    }

    /** Workers are no children of this process: their numbers are in files, as the scripts left them. */
    @AfterEach
    void nothingIsLeft() throws IOException {
        try (Stream<Path> files = Stream.concat(Files.list(home), Files.list(folder))) {
            for (Path each :
                    files.filter(file -> file.toString().endsWith(".pid")).toList()) {
                ProcessHandle.of(Long.parseLong(Files.readString(each).strip()))
                        .ifPresent(ProcessHandle::destroyForcibly);
            }
        }
    }

    private static void script(Path file, String text) throws IOException {
        Files.writeString(file, "#!/bin/sh\n" + text + "\n");
        assertThat(file.toFile().setExecutable(true)).isTrue();
    }

    private int runs(String... command) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile());
        Map<String, String> environment = builder.environment();
        environment.put("PATH", bin + ":" + environment.get("PATH"));
        environment.put("EVENRISE_HOME", home.toString());
        environment.put("SLURM_JOB_NODELIST", "node[1-8]");
        environment.put("SLURM_CPUS_PER_TASK", "2");
        return builder.start().waitFor();
    }

    private String said() throws IOException {
        return Files.readString(folder.resolve("said.txt"));
    }

    private ProcessHandle worker(String machine) throws IOException {
        String pid =
                Files.readString(home.resolve("worker-" + machine + ".pid")).strip();
        return ProcessHandle.of(Long.parseLong(pid)).orElseThrow();
    }

    private List<String> answers(String name) throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve(name).resolve("answers"))) {
            List<String> all = new ArrayList<>();
            for (Path each : files.filter(file -> file.toString().endsWith(".plan.json"))
                    .sorted()
                    .toList()) {
                all.add(Files.readString(each));
            }
            return all;
        }
    }

    private List<String> alone() throws IOException {
        WholeProgram.run(
                true,
                "portfolio",
                folder.resolve("hall.project.json").toString(),
                "--moves",
                "100",
                "--seeds",
                "1..3",
                "-o",
                folder.resolve("near").toString());
        return answers("near");
    }

    @Test
    void workersAreStartedAndEndedOverSsh() throws Exception {
        script(bin.resolve("ssh"), "echo \"$1\" >>'" + folder.resolve("reached.txt") + "'; exec sh -c \"$2\"");
        new Jobs().makeKeys(new KeysRequest(home.resolve("keys"), List.of("localhost", "127.0.0.1", "desk")));
        String one = "localhost:" + ProgramProcess.freePort(24_000);
        String other = "127.0.0.1:" + ProgramProcess.freePort(24_500);

        assertThat(runs(SCRIPTS.resolve("workers-by-ssh.sh").toString(), "start", one, other))
                .as(said())
                .isZero();
        ProcessHandle first = worker("localhost");
        ProcessHandle second = worker("127.0.0.1");
        ProgramProcess.awaitReady(first, home.resolve("worker-localhost.log"));
        ProgramProcess.awaitReady(second, home.resolve("worker-127.0.0.1.log"));
        int code = ExitCode.NO_WORKER;
        // On a crowded machine a ready worker may answer late: the same command goes on.
        for (int tries = 0; tries < 6 && code == ExitCode.NO_WORKER; tries++) {
            code = runs(
                    bin.resolve("evenrise").toString(),
                    "portfolio",
                    "hall.project.json",
                    "--moves",
                    "100",
                    "--seeds",
                    "1..3",
                    "-o",
                    "far",
                    "--grid",
                    one + "," + other,
                    "--keys",
                    home.resolve("keys/desk").toString());
        }

        assertThat(code).as(said()).isIn(ExitCode.DONE, ExitCode.LIMITS_BROKEN);
        assertThat(answers("far")).hasSize(3).isEqualTo(alone());
        assertThat(Files.readAllLines(folder.resolve("reached.txt"))).containsExactly("localhost", "127.0.0.1");
        assertThat(runs(SCRIPTS.resolve("workers-by-ssh.sh").toString(), "stop", one, other))
                .as(said())
                .isZero();
        assertThat(first.onExit().get(1, TimeUnit.MINUTES).isAlive()).isFalse();
        assertThat(second.onExit().get(1, TimeUnit.MINUTES).isAlive()).isFalse();
    }

    @Test
    void aBatchJobRunsWorkersAndTheCommandBesideThem() throws Exception {
        int port = ProgramProcess.freePort(25_000);
        script(bin.resolve("scontrol"), "[ \"$*\" = 'show hostnames node[1-8]' ] && echo localhost:" + port);
        script(bin.resolve("srun"), "echo $$ >'" + folder.resolve("srun.pid") + "'; exec \"$@\" --port " + port);
        new Jobs().makeKeys(new KeysRequest(folder.resolve("keys"), List.of("cluster")));

        int code = runs(
                SCRIPTS.resolve("portfolio.slurm.sh").toString(),
                "portfolio",
                "hall.project.json",
                "--moves",
                "100",
                "--seeds",
                "1..3",
                "-o",
                "far");

        assertThat(code).as(said()).isIn(ExitCode.DONE, ExitCode.LIMITS_BROKEN);
        assertThat(said()).contains("with 2 slots", "3 plans asked for");
        assertThat(answers("far")).hasSize(3).isEqualTo(alone());
        Optional<ProcessHandle> worker = ProcessHandle.of(
                Long.parseLong(Files.readString(folder.resolve("srun.pid")).strip()));
        assertThat(worker.filter(ProcessHandle::isAlive))
                .as("workers end with the job")
                .isEmpty();
    }
}
