package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import evenrise.model.file.PlanFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Real signals to the packed jar while it searches, and while native code proves beside it: the best plan is written,
 * whole, and the exit code is the signal's. Tenths of a second are moments after the first progress, and only choose
 * where in the search the signal falls.
 */
@DisabledOnOs(OS.WINDOWS)
@Needs("kill")
@Tag("slow")
class PackagedSignalsIT {
    private static final Path JAR = Path.of("target", "evenrise.jar").toAbsolutePath();
    /** One for all tests, so that libraries are not unpacked for every signal. */
    private static final String CACHE =
            Path.of("target", "cache").toAbsolutePath().toString();

    private static final Path DATASETS = Path.of("..", "datasets").toAbsolutePath();

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "INT, 130, 0, meridian-hall",
        "INT, 130, 5, meridian-hall",
        "INT, 130, 15, meridian-hall",
        "INT, 130, 40, meridian-hall",
        "TERM, 143, 2, meridian-hall",
        "TERM, 143, 25, meridian-hall",
        "HUP, 129, 8, meridian-hall",
        "HUP, 129, 30, willow-chapel",
        "INT, 130, 10, harbour-arena",
        "TERM, 143, 20, harbour-arena"
    })
    void keepsTheBestPlan(String signal, int code, int tenths, String dataset) throws Exception {
        keepsTheBestPlan(signal, code, tenths, dataset, List.of());
    }

    /** Where nothing native can be unpacked or loaded, the plan is as safe. */
    @ParameterizedTest
    @CsvSource({"INT, 130, 12", "TERM, 143, 1", "HUP, 129, 20"})
    void keepsTheBestPlanWithoutNativeCode(String signal, int code, int tenths) throws Exception {
        keepsTheBestPlan(signal, code, tenths, "willow-chapel", nowhereToUnpack());
    }

    @Test
    void goesOnWithoutProofsWhereNothingCanBeUnpacked() throws Exception {
        Process process = start("willow-chapel", "4s", nowhereToUnpack());

        assertThat(process.waitFor()).as(said()).isIn(0, 4, 6);

        assertThat(said()).containsOnlyOnce("the solver that proves bounds does not run here");
        assertThat(PlanFile.read(plan()).value()).isPresent();
    }

    private List<String> nowhereToUnpack() throws IOException {
        Path full = Files.writeString(folder.resolve("no-folder"), "");
        return List.of("-Djava.io.tmpdir=" + full, "-Duser.home=" + full);
    }

    private void keepsTheBestPlan(String signal, int code, int tenths, String dataset, List<String> options)
            throws Exception {
        Process process = start(dataset, "60s", options);
        while (process.isAlive() && !said().contains("objective")) {
            process.waitFor(20, TimeUnit.MILLISECONDS);
        }
        process.waitFor(100L * tenths, TimeUnit.MILLISECONDS);
        new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid()))
                .start()
                .waitFor();

        assertThat(process.waitFor()).as(said()).isEqualTo(code);
        assertThat(PlanFile.read(plan()).value()).isPresent();
        assertThat(Files.readString(folder.resolve("summary"))).contains("Interrupted; the best plan so far is kept.");
    }

    private Process start(String dataset, String time, List<String> options) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(options);
        command.addAll(List.of(
                "-jar",
                JAR.toString(),
                "plan",
                DATASETS.resolve(dataset).resolve("project.json").toString(),
                "--time",
                time,
                "--threads",
                "1",
                "-o",
                plan().toString()));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectError(folder.resolve("said").toFile())
                .redirectOutput(folder.resolve("summary").toFile());
        builder.environment().put("XDG_CACHE_HOME", options.isEmpty() ? CACHE : folder.resolve("no-folder") + "");
        return builder.start();
    }

    private Path plan() {
        return folder.resolve("found.plan.json");
    }

    private String said() throws IOException {
        return Files.readString(folder.resolve("said"));
    }
}
