package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.project.Overlap;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is exported and taken in again changes nothing; what is edited in between is taken in, and nothing else. */
@Tag("random")
class RoundTripTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int EDITS = 25;

    private static final List<String> TEXTS = List.of(
            "Sub left",
            "=1+2",
            "'quoted'",
            "a, \"b\"; c",
            "Bühne – 2 m²",
            "1,5",
            "007",
            "true",
            "# no comment",
            "two\nlines",
            "_x000D_",
            "[]",
            "\"\"");

    @TempDir
    private Path folder;

    private final Jobs jobs = new Jobs();

    private Path drawn(int seed) throws Exception {
        Set<VenuePart> parts = seed % 2 == 0 ? Set.of() : EnumSet.allOf(VenuePart.class);
        Project venue = jobs.generate(new GenerateRequest(
                seed % 2 == 0 ? 2 : 5,
                OptionalInt.empty(),
                PhaseSystem.THREE_PHASE,
                seed,
                Optional.empty(),
                parts,
                Overlap.ONE_AT_A_TIME));
        Path file = folder.resolve("drawn.json");
        ProjectFile.write(venue, file, Format.JSON);
        return file;
    }

    private static String entry(ObjectNode owner) {
        return owner.path("id").asText();
    }

    /** Notes, keys of one's own and an object that no sheet shows. */
    private Path noted(Path file) throws IOException {
        ObjectNode root = (ObjectNode) JSON.readTree(file.toFile());
        ((ObjectNode) root.at("/loads/0"))
                .put("x-remark", "=ask Ann")
                .putObject("x-more")
                .put("n", 1);
        ((ObjectNode) root.at("/loads/1")).put("x-remark", 7).put("notes", " blank at the ends ");
        ((ObjectNode) root.at("/panels/0")).putArray("notes").add("one").add("two");
        return Files.writeString(file, root.toString());
    }

    private TakeInResult takenIn(Path project, Path edited, String name) {
        Path tables = folder.resolve(name);
        jobs.export(new ExportRequest(Source.file(edited), false, tables));
        return jobs.takeIn(new TakeInRequest(project, tables, project, false));
    }

    private static Reading<Project> read(Path file) {
        Reading<Project> read = ProjectFile.read(file);
        assertThat(read.value()).as(read.problems().toString()).isPresent();
        return read;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void withoutAnEditChangesNoByte(int seed) throws Exception {
        Path project = noted(drawn(seed));
        byte[] before = Files.readAllBytes(project);

        for (String name : List.of("same.xlsx", "same")) {
            TakeInResult result = takenIn(project, project, name);

            assertThat(result.changes()).as(name).isEmpty();
            assertThat(result.isWritten()).isFalse();
            assertThat(Files.readAllBytes(project)).isEqualTo(before);
        }
    }

    @Test
    void writesTheSameWorkbookEachTime() throws Exception {
        Path project = drawn(1);
        for (String name : List.of("a.xlsx", "b.xlsx")) {
            jobs.export(new ExportRequest(Source.file(project), false, folder.resolve(name)));
        }

        assertThat(folder.resolve("a.xlsx")).hasSameBinaryContentAs(folder.resolve("b.xlsx"));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void takesInExactlyWhatWasEdited(int seed) throws Exception {
        Path project = noted(drawn(seed));
        ObjectNode root = (ObjectNode) JSON.readTree(project.toFile());
        Random random = new Random(seed);
        for (int i = 0; i < EDITS; i++) {
            edit(root, random);
        }
        Path edited = Files.writeString(folder.resolve("edited.json"), root.toString());
        Project wanted = read(edited).value().orElseThrow();

        TakeInResult result = takenIn(project, edited, seed % 2 == 0 ? "edited.xlsx" : "edited");

        assertThat(result.changes()).isNotEmpty();
        assertThat(read(project).value()).contains(wanted);
        JsonNode written = JSON.readTree(project.toFile());
        for (JsonNode load : root.path("loads")) {
            written.path("loads").forEach(other -> {
                if (entry((ObjectNode) other).equals(entry((ObjectNode) load))) {
                    assertThat(other.path("x-more")).isEqualTo(load.path("x-more"));
                    assertThat(other.path("x-remark").asText())
                            .isEqualTo(load.path("x-remark").asText());
                }
            });
        }
        assertThat(written.at("/panels/0/notes")).isEqualTo(root.at("/panels/0/notes"));
        assertThat(takenIn(project, edited, "again.xlsx").changes()).isEmpty();
    }

    private static void edit(ObjectNode root, Random random) {
        ArrayNode loads = (ArrayNode) root.get("loads");
        ObjectNode load = (ObjectNode) loads.get(random.nextInt(loads.size()));
        switch (random.nextInt(8)) {
            case 0 -> load.put("running_a", Math.max(0.01, random.nextInt(1_000) / 97.0));
            case 1 -> load.put("name", TEXTS.get(random.nextInt(TEXTS.size())));
            case 2 -> load.putArray("guessed").add("running_a").add("name");
            case 3 -> load.put("power_factor", 0.5 + random.nextInt(50) / 100.0);
            case 4 -> load.remove("third_harmonic");
            case 5 -> load.put("x-remark", TEXTS.get(random.nextInt(TEXTS.size())));
            case 6 -> {
                ObjectNode added = loads.addObject().put("id", "new " + random.nextInt(10_000) + ", \"x\"");
                added.put("role", "auxiliary")
                        .put("breaker_a", 16)
                        .put("running_a", 1.25)
                        .put("switched", false);
            }
            default -> ((ObjectNode) root.at("/panels/0")).put("rated_a", 300 + random.nextInt(100));
        }
    }
}
