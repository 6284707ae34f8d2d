package evenrise.model;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenrise.model.check.Severity;
import evenrise.model.file.Format;
import evenrise.model.file.Problem;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.Schemas;
import evenrise.model.file.ScriptFile;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@DisplayName("A folder of datasets/")
class DatasetsTest {
    private static final Path DATASETS = Path.of("..", "datasets");
    private static final Path BROKEN = DATASETS.resolve("broken");
    private static final String INFEASIBLE = "overloaded-club";
    /** How {@code expected.txt} writes the empty pointer. */
    private static final String WHOLE_FILE = "(file)";

    static List<Path> folders() throws IOException {
        return foldersOf(DATASETS);
    }

    static List<Path> scenarios() throws IOException {
        return folders().stream().filter(folder -> !folder.equals(BROKEN)).toList();
    }

    static List<Path> brokenCases() throws IOException {
        return foldersOf(BROKEN);
    }

    private static List<Path> foldersOf(Path parent) throws IOException {
        try (Stream<Path> entries = Files.list(parent)) {
            return entries.filter(Files::isDirectory).sorted().toList();
        }
    }

    private static Path project(Path folder) {
        return folder.resolve("project.json");
    }

    @ParameterizedTest
    @MethodSource("folders")
    void saysThatItIsInventedAndCautions(Path folder) throws IOException {
        String readme = Files.readString(folder.resolve("README.md")).replaceAll("\\s+", " ");

        assertThat(readme).contains("invented, in the range of common practice, no source");
        assertThat(readme).contains(Cautions.ALL.subList(0, 3));
    }

    @Nested
    @DisplayName("that is a scenario")
    class Scenario {
        @ParameterizedTest
        @MethodSource("evenrise.model.DatasetsTest#scenarios")
        void isReadWithoutAProblem(Path folder) {
            Reading<Project> read = ProjectFile.read(project(folder));

            if (folder.endsWith(INFEASIBLE)) {
                assertThat(read.value()).isPresent();
                assertThat(read.problems()).anyMatch(problem -> problem.severity() == Severity.IMPOSSIBLE);
                assertThat(read.problems()).extracting(Problem::severity).containsOnly(Severity.IMPOSSIBLE);
            } else {
                assertThat(read.problems()).isEmpty();
            }
        }

        @ParameterizedTest
        @MethodSource("evenrise.model.DatasetsTest#scenarios")
        void keepsTheSchema(Path folder) throws IOException {
            JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                    .getSchema(Schemas.project());

            assertThat(schema.validate(
                            new ObjectMapper().readTree(project(folder).toFile())))
                    .isEmpty();
        }

        @ParameterizedTest
        @MethodSource("evenrise.model.DatasetsTest#scenarios")
        void isWrittenAndReadBackEqual(Path folder, @TempDir Path scratch) throws IOException {
            Project original = ProjectFile.read(project(folder)).value().orElseThrow();

            for (Format format : Format.values()) {
                Path copy = scratch.resolve("copy." + format.name().toLowerCase(java.util.Locale.ROOT));
                ProjectFile.write(original, copy, format);

                assertThat(ProjectFile.read(copy).value()).contains(original.withCautions(Cautions.ALL));
            }
        }
    }

    static List<Path> scripts() throws IOException {
        List<Path> scripts = new ArrayList<>();
        for (Path folder : scenarios()) {
            Path own = folder.resolve("scripts");
            if (Files.isDirectory(own)) {
                try (Stream<Path> entries = Files.list(own)) {
                    scripts.addAll(entries.sorted().toList());
                }
            }
        }
        return scripts;
    }

    @ParameterizedTest
    @MethodSource("scripts")
    void hasScriptsThatAreReadWithoutAProblemAndKeepTheSchema(Path script) throws IOException {
        Project subject = ProjectFile.read(project(script.getParent().getParent()))
                .value()
                .orElseThrow();
        JsonSchema schema =
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Schemas.script());

        assertThat(ScriptFile.read(script, subject).problems()).isEmpty();
        assertThat(schema.validate(new ObjectMapper().readTree(script.toFile())))
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("brokenCases")
    void thatIsBrokenIsReportedAtEachExpectedPlaceAndNoOther(Path folder) throws IOException {
        List<String> expected = Files.readAllLines(folder.resolve("expected.txt"));

        Reading<Project> read = ProjectFile.read(project(folder));

        assertThat(read.value()).isEmpty();
        assertThat(read.problems())
                .filteredOn(problem -> problem.severity() == Severity.ERROR)
                .extracting(problem -> problem.pointer().isEmpty() ? WHOLE_FILE : problem.pointer())
                .containsExactlyInAnyOrderElementsOf(expected);
        assertThat(read.problems())
                .extracting(Problem::message)
                .allSatisfy(message -> assertThat(message).contains(", expected "));
    }
}
