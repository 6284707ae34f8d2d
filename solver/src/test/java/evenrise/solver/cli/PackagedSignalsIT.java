package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
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
class PackagedSignalsIT {
    private static final Path JAR = Path.of("target", "evenrise.jar").toAbsolutePath();
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

    /** Where nothing native can be unpacked or loaded, one note says so, and the plan is as safe. */
    @ParameterizedTest
    @CsvSource({"INT, 130, 12", "TERM, 143, 1", "HUP, 129, 20"})
    void keepsTheBestPlanWithoutNativeCode(String signal, int code, int tenths) throws Exception {
        Path full = Files.writeString(folder.resolve("no-folder"), "");

        String said = keepsTheBestPlan(
                signal, code, tenths, "meridian-hall", List.of("-Djava.io.tmpdir=" + full, "-Duser.home=" + full));

        assertThat(said).contains("the solver that proves bounds does not run here");
    }

    private String keepsTheBestPlan(String signal, int code, int tenths, String dataset, List<String> options)
            throws Exception {
        Path plan = folder.resolve("found.plan.json");
        Path said = folder.resolve("said");
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(options);
        command.addAll(List.of(
                "-jar",
                JAR.toString(),
                "plan",
                DATASETS.resolve(dataset).resolve("project.json").toString(),
                "--time",
                "60s",
                "--threads",
                "1",
                "-o",
                plan.toString()));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(said.toFile());
        builder.environment()
                .put(
                        "XDG_CACHE_HOME",
                        options.isEmpty()
                                ? cache()
                                : folder.resolve("no-folder").toString());
        builder.redirectOutput(folder.resolve("summary").toFile());
        Process process = builder.start();
        while (process.isAlive() && !Files.readString(said).contains("objective")) {
            process.waitFor(20, TimeUnit.MILLISECONDS);
        }
        process.waitFor(100L * tenths, TimeUnit.MILLISECONDS);
        new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid()))
                .start()
                .waitFor();

        assertThat(process.waitFor()).as(Files.readString(said)).isEqualTo(code);
        assertThat(PlanFile.read(plan).value()).isPresent();
        assertThat(Files.readString(folder.resolve("summary"), StandardCharsets.UTF_8))
                .contains("Interrupted; the best plan so far is kept.");
        return Files.readString(said);
    }

    /** The usual one, so that libraries are not unpacked for every signal. */
    private static String cache() {
        return Path.of("target", "cache").toAbsolutePath().toString();
    }
}
