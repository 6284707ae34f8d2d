package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.ProjectChecks;
import evenrise.model.estimate.PriceBasis;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lists that say "about 40" or "10-14" become projects with quantities that are open. */
class OpenQuantitiesTest {
    /** One piece fills a breaker of 20 A. */
    private static final String AMPLIFIER = ",Amplifier rack,12,amplifier,Hall\n";

    @TempDir
    private Path folder;

    private EquipmentList read(String csv) throws IOException {
        return read(csv, Mapping.USUAL);
    }

    private EquipmentList read(String csv, Mapping mapping) throws IOException {
        EquipmentList list = EquipmentList.read(Files.writeString(folder.resolve("list.csv"), csv), mapping, "Test");
        assertThat(list.problems()).isEmpty();
        assertThat(ProjectChecks.errors(list.project().orElseThrow())).isEmpty();
        return list;
    }

    private QuantityRange only(String csv) throws IOException {
        Project project = read(csv).project().orElseThrow();
        assertThat(project.quantities()).hasSize(1);
        return project.quantities().get(0);
    }

    @ParameterizedTest(name = "''{0}'': {1} to {3}, likely {2}, {4} in the project")
    @CsvSource({
        "about 40, 32, 40, 48, 40",
        "~10, 8, 10, 12, 10",
        "8?, 6, 8, 10, 8",
        "10 (TBC), 8, 10, 12, 10",
        "10-14, 10, 12, 14, 14",
        "40 to 60, 40, 50, 60, 60"
    })
    void aCellSaysHowManyThereMayBe(String written, int low, int likely, int high, int listed) throws IOException {
        QuantityRange range = only("Qty,Name,Amps,Role,Room\n" + written + AMPLIFIER);

        assertThat(range.name()).isEqualTo("Amplifier rack");
        assertThat(List.of(range.low(), range.tip(), range.high(), range.listed()))
                .containsExactly(low, likely, high, listed);
        assertThat(range.stated()).isTrue();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "Qty low,Qty likely,Qty high | 36,40,44",
                "Low,Likely,High | 36,40,44",
                "Menge min,Menge,Menge max | 36,40,44",
                "Quantity high,Quantity,Quantity low | 44,40,36"
            })
    void columnsSayLowLikelyAndHigh(String headers, String numbers) throws IOException {
        QuantityRange range = only(headers + ",Name,Amps,Role,Room\n" + numbers + AMPLIFIER);

        assertThat(List.of(range.low(), range.tip(), range.high(), range.listed()))
                .containsExactly(36, 40, 44, 40);
    }

    @Test
    void withoutALikelyNumberTheMostIsTakenSoThatNothingLacksAPlace() throws IOException {
        QuantityRange range = only("Qty low,Qty high,Name,Amps,Role,Room\n10,14" + AMPLIFIER);

        assertThat(range.listed()).isEqualTo(14);
        assertThat(range.likely()).isEqualTo(OptionalInt.of(12));
    }

    @ParameterizedTest
    @CsvSource({"Max qty", "Min qty"})
    void oneEndAloneCountsAsItStandsAndIsTold(String header) throws IOException {
        EquipmentList list = read(header + ",Name,Amps,Role,Room\n7" + AMPLIFIER);

        assertThat(list.pieces()).isEqualTo(7);
        assertThat(list.project().orElseThrow().quantities()).isEmpty();
        assertThat(list.guesses()).anySatisfy(text -> assertThat(text).contains("the fewest or the most pieces alone"));
    }

    @Test
    void numbersInTheWrongOrderAreAProblem() throws IOException {
        EquipmentList list = EquipmentList.read(
                Files.writeString(folder.resolve("list.csv"), "Low,Qty,High,Name,Amps\n5,4,6,Lamp,1\n"),
                Mapping.USUAL,
                "Test");

        assertThat(list.problems()).singleElement().asString().contains("row 2", "5, 4, 6", "low, likely, high");
    }

    @Test
    void aNumberThatIsExactIsNotOpen() throws IOException {
        assertThat(read("Qty,Name,Amps,Role,Room\n40" + AMPLIFIER)
                        .project()
                        .orElseThrow()
                        .quantities())
                .isEmpty();
        assertThat(read("Low,Qty,High,Name,Amps,Role,Room\n4,4,4" + AMPLIFIER)
                        .project()
                        .orElseThrow()
                        .quantities())
                .isEmpty();
    }

    @Test
    void whatNobodyStatesCountsOnceAndIsToldWithEveryPrice() throws IOException {
        EquipmentList list = read("Qty,Name,Amps,Role,Room\nTBC" + AMPLIFIER);
        Project project = list.project().orElseThrow();

        assertThat(project.quantities()).singleElement().satisfies(range -> {
            assertThat(range.stated()).isFalse();
            assertThat(List.of(range.low(), range.listed(), range.high())).containsExactly(1, 1, 1);
        });
        assertThat(list.questions()).anySatisfy(text -> assertThat(text).contains("row 2", "how many"));
        assertThat(PriceBasis.of(project).assumptions())
                .contains("Nobody has said how many there are, and no range covers it; counted as: Amplifier rack 1.");
    }

    /** Three pieces of 5 A use 15 of the 16 A that a breaker of 20 A carries; 14 pieces need 5 breakers, 10 need 4. */
    @Test
    void piecesThatShareBreakersAreCountedAsBreakers() throws IOException {
        QuantityRange range = only("Qty,Name,Amps,Inrush,Role,Room\n10-14,Ceiling amplifier,5,8,amplifier,Hall\n");

        assertThat(range.name()).isEqualTo("Ceiling amplifier (breakers of up to 3)");
        assertThat(List.of(range.low(), range.tip(), range.high(), range.listed()))
                .containsExactly(4, 4, 5, 5);
    }

    @Test
    void theirPiecesShareNoBreakerWithOthers() throws IOException {
        Project project = read("Qty,Name,Amps,Role,Room\n~2,Lamp,1,auxiliary,Hall\n3,Screen,1,auxiliary,Hall\n")
                .project()
                .orElseThrow();

        assertThat(project.loads())
                .extracting(Load::name)
                .containsExactlyInAnyOrder("Hall: 2 × Lamp", "Hall: 3 × Screen");
        assertThat(project.quantities()).hasSize(1);
    }

    @Test
    void rowsOfOneNameAreToldApartByTheirRooms() throws IOException {
        assertThat(read("Qty,Name,Amps,Role,Room\n~2,Lamp,9,auxiliary,Hall\n~3,Lamp,9,auxiliary,Foyer\n")
                        .project()
                        .orElseThrow()
                        .quantities())
                .extracting(QuantityRange::name)
                .containsExactly("Lamp, Hall", "Lamp, Foyer");
    }

    @Test
    void whatSharesAStatedCircuitIsAskedAboutInstead() throws IOException {
        EquipmentList list = read("Qty,Name,Amps,Circuit\n~2,Lamp,1,5\n3,Screen,1,5\n");

        assertThat(list.project().orElseThrow().quantities()).isEmpty();
        assertThat(list.questions()).anySatisfy(text -> assertThat(text).contains("'Lamp'", "No range of prices"));
    }

    @Test
    void howFarAboutGoesIsOfTheMapping() throws IOException {
        Mapping mapping = Mapping.USUAL.withAboutPercent(50);

        Project project = read("Qty,Name,Amps,Role,Room\nabout 40" + AMPLIFIER, mapping)
                .project()
                .orElseThrow();

        assertThat(project.quantities().get(0).low()).isEqualTo(20);
        assertThat(project.quantities().get(0).high()).isEqualTo(60);
    }

    @Test
    void whatWasTakenIsToldForConfirmation() throws IOException {
        assertThat(read("Qty,Name,Amps,Role,Room\n10-14" + AMPLIFIER).guesses())
                .anySatisfy(text -> assertThat(text)
                        .contains("row 2", "'Amplifier rack'", "14 pieces in the project", "likely 12", "10 to 14"));
    }

    @Test
    void readingAgainWithTheWholeMappingGivesTheSame() throws IOException {
        String csv = "Low,Qty,High,Name,Amps,Role,Room\n36,40,44" + AMPLIFIER + ",10-14,,Lamp,1,auxiliary,Hall\n";
        EquipmentList first = read(csv);

        assertThat(read(csv, first.mapping()).project()).isEqualTo(first.project());
    }
}
