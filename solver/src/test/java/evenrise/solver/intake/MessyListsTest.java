package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.ProjectChecks;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A long run: {@code -Devenrise.lists=100000}. */
@DisplayName("Messy lists, drawn from a seed")
class MessyListsTest {
    private static final long LISTS = Long.getLong("evenrise.lists", 12);

    /** Fields that each load states as guessed whatever the list says. */
    private static final Set<String> ALWAYS_GUESSED = Set.of("inrush_half_ms", "third_harmonic");

    @TempDir
    private Path folder;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, LISTS);
    }

    private EquipmentList read(String csv, Mapping mapping) throws IOException {
        return EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), mapping, "Test");
    }

    /** Pieces are counted while the list is drawn, apart from the reader. */
    @ParameterizedTest
    @MethodSource("seeds")
    void loseNoPieceAndAskWhatTheyLeaveOpen(long seed) throws IOException {
        MessyLists.Drawn drawn = MessyLists.of(120, seed);

        EquipmentList list = read(drawn.csv(), Mapping.USUAL);

        assertThat(list.problems()).hasSize(drawn.unreadable());
        assertThat(list.listed()).isEqualTo(drawn.pieces());
        assertThat(list.pieces() + list.leftOut()).isEqualTo(drawn.pieces());
        assertThat(list.questions().stream().filter(text -> text.contains("what does")))
                .hasSize(drawn.open());
        Project project = list.project().orElseThrow();
        assertThat(ProjectChecks.errors(project)).isEmpty();
        assertThat(pieces(project.loads())).isEqualTo(list.pieces() + drawn.redundant());
    }

    /** Pieces by the names of loads: {@code Stage: 2 × Lamp, Desk}. */
    private static int pieces(List<Load> loads) {
        return loads.stream()
                .flatMap(load ->
                        List.of(load.name().replaceFirst("^[^:]*: ", "").split(", (?=[0-9]+ × |[A-Z])")).stream())
                .mapToInt(part -> part.matches("[0-9]+ × .*") ? Integer.parseInt(part.replaceAll(" ×.*", "")) : 1)
                .sum();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void areReadAgainByTheirMappingToTheSameProject(long seed) throws IOException {
        String csv = seed % 2 == 0
                ? MessyLists.of(80, seed).csv()
                : MessyLists.hostile(seed).csv();
        EquipmentList first = read(csv, Mapping.USUAL);

        EquipmentList again = read(csv, first.mapping());

        assertThat(again.project()).isEqualTo(first.project());
        assertThat(again.questions().stream().filter(text -> !text.contains("is not read")))
                .containsExactlyInAnyOrderElementsOf(first.questions().stream()
                        .filter(text -> !text.contains("is not read"))
                        .toList());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void spoiltEndInProblemsAndNotInACrash(long seed) throws IOException {
        EquipmentList list = read(MessyLists.hostile(seed).csv(), Mapping.USUAL);

        assertThat(list.pieces() + list.leftOut()).isEqualTo(list.listed());
        list.project().ifPresent(project -> {
            assertThat(ProjectChecks.errors(project)).isEmpty();
            assertThat(project.loads()).hasSize(list.breakers());
        });
    }

    /** What a load's {@code guessed} names is told in words, too. */
    @ParameterizedTest
    @MethodSource("seeds")
    void tellEveryKindOfGuess(long seed) throws IOException {
        EquipmentList list = read(MessyLists.of(120, seed).csv(), Mapping.USUAL);
        Set<String> guessed = list.project().orElseThrow().loads().stream()
                .flatMap(load -> load.guessed().stream())
                .filter(key -> !ALWAYS_GUESSED.contains(key))
                .collect(Collectors.toSet());
        String told = String.join("\n", list.guesses()) + String.join("\n", list.questions());

        for (String key : guessed) {
            assertThat(told)
                    .as(key)
                    .contains(
                            switch (key) {
                                case "role" -> "role ";
                                case "poles" -> "pole";
                                case "power_factor" -> "power factor";
                                case "idle_a" -> "idle";
                                case "inrush_peak_a" -> "inrush";
                                case "settle_s" -> "settles";
                                case "switched" -> "unswitched";
                                case "running_a" -> told.contains("reserved") ? "reserved" : "about, or a range";
                                case "breaker_a" -> "breaker";
                                default -> throw new AssertionError("nothing tells of " + key);
                            });
        }
    }

    @Test
    void areAsLongAsIsAskedForAndKeptAsADataset() throws IOException {
        Path kept = Path.of("..", "datasets", "heron-wharf", "list.csv");
        MessyLists.Drawn drawn = MessyLists.of(190, 190);

        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.writeString(kept, drawn.csv());
        }
        assertThat(drawn.pieces()).isEqualTo(190);
        assertThat(kept).content().isEqualTo(drawn.csv());
    }
}
