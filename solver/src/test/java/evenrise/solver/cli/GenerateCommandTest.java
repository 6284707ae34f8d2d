package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.app.Jobs;
import evenrise.solver.sample.Sample;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("evenrise generate")
class GenerateCommandTest {
    @TempDir
    private Path folder;

    private final ByteArrayOutputStream data = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... arguments) {
        List<String> all = new ArrayList<>(List.of("generate"));
        all.addAll(List.of(arguments));
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]), data, err, StandardCharsets.UTF_8, false, false, false);
        return Evenrise.run(terminal, new Jobs(), all.toArray(String[]::new));
    }

    @Test
    void writesAProjectThatReadsBackEqualToTheDrawnOne() {
        Path file = folder.resolve("venue.project.json");

        int code = run("--panels", "5", "--seed", "9", "-o", file.toString());

        Reading<Project> read = ProjectFile.read(file);
        assertThat(code).isZero();
        assertThat(read.problems()).isEmpty();
        assertThat(read.value()).contains(Sample.venue(9, 5).withCautions(Cautions.ALL));
    }

    @Test
    void writesTheSameBytesForTheSameSeed() throws IOException {
        run("--panels", "3", "--seed", "4", "-o", folder.resolve("a.json").toString());
        run("--panels", "3", "--seed", "4", "-o", folder.resolve("b.json").toString());

        assertThat(folder.resolve("a.json")).hasSameBinaryContentAs(folder.resolve("b.json"));
    }

    @Test
    void writesYamlByTheEnding() throws IOException {
        Path file = folder.resolve("venue.yaml");

        run("--panels", "1", "--system", "split-phase", "-o", file.toString());

        assertThat(Files.readString(file)).doesNotStartWith("{");
        assertThat(ProjectFile.read(file).value().orElseThrow().supply().system())
                .isEqualTo(PhaseSystem.SPLIT_PHASE);
    }

    @Test
    void writesToStandardOutput() {
        int code = run("--panels", "2", "--loads", "30", "-o", "-");

        Reading<Project> read = ProjectFile.read(new ByteArrayInputStream(data.toByteArray()), "-");
        assertThat(code).isZero();
        assertThat(read.value().orElseThrow().loads()).hasSize(30);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "harbour-arena, --panels 40 --loads 1000 --seed 7, Harbour Arena",
        "orchard-campus, --panels 28 --loads 600 --seed 3 --with all, Orchard Campus"
    })
    void drawsADatasetAsItsPageSays(String folderName, String options, String name) throws IOException {
        Path drawn = folder.resolve("project.json");
        Path kept = Path.of("..", "datasets", folderName);
        List<String> arguments = new ArrayList<>(List.of(options.split(" ")));
        arguments.addAll(List.of("--name", name, "-o", drawn.toString()));

        run(arguments.toArray(String[]::new));

        assertThat(Files.readString(kept.resolve("README.md")))
                .contains("evenrise generate " + options + " --name \"" + name + "\"");
        assertThat(drawn).hasSameBinaryContentAs(kept.resolve("project.json"));
    }

    @Test
    void drawsThePartsThatAreNamed() {
        run("--panels", "3", "--with", "racks,Off-Delays", "--with", "systems", "--overlap", "any", "-o", "-");

        Project project = ProjectFile.read(new ByteArrayInputStream(data.toByteArray()), "-")
                .value()
                .orElseThrow();
        assertThat(project.overlap()).isEqualTo(Overlap.ANY);
        assertThat(project.systems()).isNotEmpty();
        assertThat(project.loads()).anyMatch(load -> load.rack().isPresent());
        assertThat(project.nodes()).isEmpty();
        assertThat(project.scenes()).isEmpty();
    }

    @Test
    void refusesAPartThatIsNoneAsAUsageError() {
        int code = run("--panels", "3", "--with", "lifts", "-o", "-");

        assertThat(code).isEqualTo(2);
        assertThat(err.toString()).contains("'lifts', expected nodes, transformers, source, systems, scenes, boards,");
    }

    @Test
    void refusesAnOverlapOfNothingAndASourceWithoutRoomAsUsageErrors() {
        assertThat(run("--panels", "3", "--overlap", "any", "-o", "-")).isEqualTo(2);
        assertThat(err.toString()).contains("Maybe ask for systems, too.");
        assertThat(run("--panels", "3", "--with", "source", "-o", "-")).isEqualTo(2);
        assertThat(err.toString()).contains("Maybe ask for 5 panels.");
    }

    @Test
    void refusesANameThatNobodySeesAsAUsageError() {
        assertThat(run("--panels", "1", "--name", " ", "-o", "-")).isEqualTo(2);
    }

    @Test
    void refusesASizeThatNoPanelHoldsAsAUsageError() {
        int code = run("--panels", "2", "--loads", "1000", "-o", "-");

        assertThat(code).isEqualTo(2);
        assertThat(err.toString()).contains("1000 loads in 2 panels, expected 12 to 60. Maybe ask for 42 panel(s).");
        assertThat(data.size()).isZero();
    }

    @Test
    void refusesAnUnknownSystemAsAUsageError() {
        int code = run("--panels", "2", "--system", "delta", "-o", "-");

        assertThat(code).isEqualTo(2);
        assertThat(err.toString()).contains("'delta', expected three-phase or split-phase");
    }

    @Test
    void saysThatAnOutputCouldNotBeWritten() {
        int code = run("--panels", "1", "-o", folder.resolve("none/venue.json").toString());

        assertThat(code).isEqualTo(5);
        assertThat(err.toString()).startsWith("evenrise: ").contains("venue.json");
    }
}
