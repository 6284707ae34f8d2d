package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two worker processes, and commands that have them search: every file is that of one machine, byte for byte. */
@Tag("slow")
@Timeout(600)
class GridCommandsTest {
    private static final Path DATASETS = Path.of("..", "datasets");

    @TempDir
    private static Path folder;

    private static final List<Process> PROCESSES = new ArrayList<>();
    private static String hosts;

    @BeforeAll
    static void startsWorkers() throws Exception {
        List<Integer> ports = List.of(ProgramProcess.freePort(26_000), ProgramProcess.freePort(26_500));
        hosts = "127.0.0.1:" + ports.get(0) + ",127.0.0.1:" + ports.get(1);
        for (int port : ports) {
            worker(port);
        }
    }

    @AfterAll
    static void ends() {
        PROCESSES.forEach(Process::destroyForcibly);
    }

    @Test
    void planByManySeeds() throws Exception {
        List<String> asked = List.of("plan", hall(), "--moves", "400", "--seeds", "1..4");

        int far = ends(with(asked, "-o", at("plan-far/hall.plan.json"), "--grid", hosts));
        WholeProgram.Ended near = WholeProgram.run(
                true, with(asked, "-o", at("plan-near/hall.plan.json")).toArray(String[]::new));

        assertThat(far).as(said()).isEqualTo(near.code());
        assertThat(said()).contains("with 1 slot", "The best of 4 plans is that of seed");
        assertThat(files("plan-far")).hasSize(1).isEqualTo(files("plan-near"));
    }

    @Test
    void rework() throws Exception {
        Path built = folder.resolve("built.plan.json");
        PlanFile.write(SmallHall.broken(), built, Format.JSON);
        List<String> asked = List.of("rework", hall(), built.toString(), "--moves", "1000", "--seeds", "1..2");

        int far = ends(with(asked, "-o", at("rework-far"), "--grid", hosts));
        WholeProgram.Ended near =
                WholeProgram.run(true, with(asked, "-o", at("rework-near")).toArray(String[]::new));

        assertThat(far).as(said()).isEqualTo(near.code());
        assertThat(files("rework-far")).containsKey("front.json").isEqualTo(files("rework-near"));
    }

    @Test
    void compare() throws Exception {
        List<String> asked = List.of(
                "compare",
                DATASETS.resolve("copper-mill/project.json").toString(),
                "--panels",
                "2",
                "--boards",
                "2",
                "--tries",
                "2",
                "--moves",
                "1000");

        int far = ends(with(asked, "-o", at("compare-far"), "--grid", hosts));
        WholeProgram.Ended near =
                WholeProgram.run(true, with(asked, "-o", at("compare-near")).toArray(String[]::new));

        assertThat(far).as(said()).isEqualTo(near.code());
        assertThat(files("compare-far")).containsKey("p2-b2-usual.plan.json").isEqualTo(files("compare-near"));
    }

    private static void worker(int port) throws Exception {
        Path log = folder.resolve("worker-" + port + ".txt");
        Process worker = ProgramProcess.start(
                log, List.of("worker", "--join", hosts, "--port", Integer.toString(port), "--slots", "1"));
        PROCESSES.add(worker);
        ProgramProcess.awaitReady(worker.toHandle(), log);
    }

    private static int ends(List<String> arguments) throws Exception {
        Process process = ProgramProcess.start(folder.resolve("said.txt"), arguments);
        PROCESSES.add(process);
        return process.waitFor();
    }

    private static String said() throws IOException {
        return Files.readString(folder.resolve("said.txt")).replaceAll("\\s+", " ");
    }

    /** Small: what is proven of it takes no time. */
    private static String hall() throws IOException {
        return Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT)
                .toString();
    }

    private static String at(String name) throws IOException {
        Path path = folder.resolve(name);
        Files.createDirectories(path.getParent());
        return path.toString();
    }

    private static List<String> with(List<String> arguments, String... more) {
        return Stream.concat(arguments.stream(), Stream.of(more)).toList();
    }

    private static Map<String, String> files(String name) throws IOException {
        Map<String, String> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder.resolve(name))) {
            for (Path each : all.filter(Files::isRegularFile).toList()) {
                files.put(
                        folder.resolve(name).relativize(each).toString(),
                        Files.readString(each, StandardCharsets.ISO_8859_1));
            }
        }
        return files;
    }
}
