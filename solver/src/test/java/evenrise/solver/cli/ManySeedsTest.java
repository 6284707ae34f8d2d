package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** By many seeds with the engine itself: what comes out is what a seed alone finds. */
class ManySeedsTest {
    private static final Path YARD = Path.of("..", "datasets", "lantern-yard");

    @TempDir
    private Path folder;

    @Test
    void writeThePlanAndDocumentsOfTheBestSeed() throws IOException {
        String hall = Files.writeString(folder.resolve("hall.project.json"), SmallHall.PROJECT)
                .toString();
        String one = folder.resolve("one/a.plan.json").toString();
        String many = folder.resolve("many/a.plan.json").toString();
        Files.createDirectories(folder.resolve("one"));
        Files.createDirectories(folder.resolve("many"));

        WholeProgram.Ended best = WholeProgram.run(
                false, "plan", hall, "--moves", "300", "--seeds", "2..4", "-o", many, "--report", at("many-report"));
        String seed = best.out().replaceFirst("(?s).*is that of seed (\\d+)\\..*", "$1");
        WholeProgram.Ended alone = WholeProgram.run(
                false, "plan", hall, "--moves", "300", "--seed", seed, "-o", one, "--report", at("one-report"));

        assertThat(best.code()).as(best.err()).isEqualTo(alone.code());
        assertThat(files("many")).isEqualTo(files("one"));
        assertThat(files("many-report").keySet())
                .isEqualTo(files("one-report").keySet())
                .isNotEmpty();
        assertThat(files("many-report")).isEqualTo(files("one-report"));
    }

    @Test
    void reworkAsOneSeedAloneDoes() throws IOException {
        Shell.Result one = rework("one", "--seed", "3", "--threads", "1");
        Shell.Result many = rework("many", "--seeds", "3");

        assertThat(many.code()).as(many.err()).isEqualTo(one.code());
        assertThat(files("many")).isEqualTo(files("one"));
    }

    @Test
    void reworkToAFrontThatIsNoWorseThanThatOfAnySeed() throws IOException {
        rework("both", "--seeds", "3..4");

        double together = leastObjective("both");
        rework("three", "--seeds", "3");
        rework("four", "--seeds", "4");
        assertThat(together).isLessThanOrEqualTo(Math.min(leastObjective("three"), leastObjective("four")));
    }

    private Shell.Result rework(String out, String... more) {
        Project project = ProjectFile.read(YARD.resolve("project.json")).value().orElseThrow();
        Plan built =
                PlanFile.read(YARD.resolve("built.plan.json"), project).value().orElseThrow();
        return new Shell(built)
                .run(Stream.concat(
                                Stream.of(
                                        "rework",
                                        YARD.resolve("project.json").toString(),
                                        YARD.resolve("built.plan.json").toString(),
                                        "--measured",
                                        YARD.resolve("measured.csv").toString(),
                                        "--moves",
                                        "1500",
                                        "-o",
                                        at(out)),
                                Stream.of(more))
                        .toArray(String[]::new));
    }

    private double leastObjective(String out) throws IOException {
        double least = Double.POSITIVE_INFINITY;
        for (Map.Entry<String, String> each : files(out).entrySet()) {
            if (each.getKey().startsWith("plan-") && !each.getKey().contains("built")) {
                Plan plan = PlanFile.read(each.getValue().getBytes(StandardCharsets.UTF_8), "a plan")
                        .value()
                        .orElseThrow();
                if (plan.violations().isEmpty()) {
                    least = Math.min(least, plan.metrics().orElseThrow().objective());
                }
            }
        }
        return least;
    }

    private String at(String name) {
        return folder.resolve(name).toString();
    }

    private Map<String, String> files(String name) throws IOException {
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
