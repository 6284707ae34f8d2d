package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.file.SideNotes;
import evenrise.solver.app.OfferRequest;
import evenrise.solver.app.Source;
import evenrise.solver.desk.DeskAnswers.PanelView;
import evenrise.solver.desk.EstimateAnswers.BoardSpare;
import evenrise.solver.desk.EstimateAnswers.EstimateView;
import evenrise.solver.desk.EstimateAnswers.MakeUpView;
import evenrise.solver.desk.EstimateAnswers.OfferView;
import evenrise.solver.desk.EstimateAnswers.PanelSpare;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Make-ups that were planned: what they leave free, the desk, and the client's page. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MakeUpsOfferedTest {
    private static final String BOTH = "{\"title\": \"Small hall\", \"alternates\": ["
            + "{\"name\": \"Least price\", \"files\": \"least-usual\"}, {\"name\": \"As it is\"}]}";

    @TempDir
    private static Path folder;

    private Desk desk;
    private DeskRoutes routes;

    @BeforeAll
    void estimate() {
        PricedHall.JOBS.compare(PricedHall.request(PricedHall.in(folder), folder.resolve("estimate")));
    }

    @BeforeEach
    void open() {
        desk = PricedHall.desk(folder);
        routes = PricedHall.routes(desk, folder);
    }

    private Record asked(String path, String body) {
        return routes.of("POST", path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    @Nested
    class Room {
        /** The hall has five loads of seven poles in all; the usual spare of bids is two slots and one output. */
        @Test
        void isWhatThePanelsAndBoardsLeaveFree() {
            MakeUpView room = (MakeUpView) asked("/api/estimate/makeup", "{\"files\": \"least-usual\"}");

            int slots = room.plan().panels().stream().mapToInt(PanelView::slots).sum();
            assertThat(room.panels().stream().mapToInt(PanelSpare::freeSlots).sum())
                    .isEqualTo(slots - 7);
            assertThat(room.panels())
                    .allMatch(each -> each.askedSlots() == 2 && each.freeSlots() >= 2 && each.askedPercent() == 10);
            assertThat(room.boards().stream().filter(each -> each.used() > 0))
                    .isNotEmpty()
                    .allMatch(each -> each.askedOutputs() == 1 && each.outputs() - each.used() >= 1);
            assertThat(room.boards().stream().mapToInt(BoardSpare::used).sum()).isEqualTo(4);
            assertThat(room.rooms()).isNotEmpty().allMatch(each -> each.upToAmps() > 0);
        }

        @ParameterizedTest
        @ValueSource(strings = {"../project", "nothing-here", "a/b", "least-usual.plan"})
        void ofWhatIsNotThereIsRefused(String files) {
            assertThatThrownBy(() -> asked("/api/estimate/makeup", "{\"files\": \"" + files + "\"}"))
                    .hasMessageContaining("no plan in the folder");
        }
    }

    @Test
    void aMakeUpComesOntoTheDeskAndUndoBringsBackWhatWasThere() {
        DeskState before = desk.state().orElseThrow();

        asked("/api/estimate/take", "{\"files\": \"least-usual\"}");

        assertThat(desk.judged().verdict().violations()).isEmpty();
        assertThat(desk.state().orElseThrow().project().panels())
                .isNotEqualTo(before.project().panels());
        assertThat(desk.state().orElseThrow().project().spare()).isPresent();
        desk.undo();
        assertThat(desk.state()).contains(before);
    }

    /** In a folder of its own, for it is another project. */
    @Test
    void notesOfTheProjectStayWithAMakeUpThatIsTaken(@TempDir Path noted) throws IOException {
        PricedHall.in(noted);
        Files.writeString(
                noted.resolve("project.json"),
                Files.readString(noted.resolve("project.json"))
                        .replace("\"id\": \"lamp\",", "\"id\": \"lamp\", \"x-colour\": \"amber\","));
        desk = PricedHall.desk(noted);
        routes = PricedHall.routes(desk, noted);
        asked("/api/estimate/begin", "{\"moves\": 200, \"tries\": 6}");
        while (((EstimateView) routes.of("GET", "/api/estimate").orElseThrow().answer(new byte[0]))
                .state()
                .equals("running")) {
            Thread.onSpinWait();
        }

        asked("/api/estimate/take", "{\"files\": \"least-usual\"}");

        assertThat(noted.resolve("estimate/least-usual.project.json")).content().contains("amber");
        assertThat(desk.state().orElseThrow().notes()).isNotEqualTo(SideNotes.NONE);
    }

    @Nested
    class Offers {
        private OfferView drawn() {
            return (OfferView) asked("/api/offer/draw", BOTH);
        }

        /** Byte for byte. */
        @Test
        void areWrittenAsTheyWereSeenAndAsTheCommandWritesThem() {
            OfferView drawn = drawn();
            assertThat(folder.resolve("offer")).doesNotExist();

            asked("/api/offer/write", "{\"drawn\": " + drawn.drawn() + "}");

            Path other = folder.resolve("by-command");
            PricedHall.JOBS.offer(new OfferRequest(
                    "Small hall",
                    List.of(
                            new OfferRequest.Named(
                                    "Least price",
                                    Source.file(folder.resolve("estimate/least-usual.project.json")),
                                    Source.file(folder.resolve("estimate/least-usual.plan.json"))),
                            new OfferRequest.Named(
                                    "As it is",
                                    Source.file(folder.resolve("project.json")),
                                    Source.file(folder.resolve("project.plan.json")))),
                    Optional.empty(),
                    0,
                    other));
            assertThat(drawn.files()).containsExactly("offer.html", "offer.pdf", "offer.csv");
            for (String file : drawn.files()) {
                assertThat(folder.resolve("offer").resolve(file)).hasSameBinaryContentAs(other.resolve(file));
                assertThat(routes.piece("/offered/" + drawn.drawn() + "/" + file)
                                .orElseThrow()
                                .bytes())
                        .as(file)
                        .isEqualTo(read(other.resolve(file)));
            }
        }

        private static byte[] read(Path file) {
            try {
                return Files.readAllBytes(file);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        @Test
        void standSideBySideWithTheirDifferences() {
            OfferView drawn = drawn();

            assertThat(drawn.names()).containsExactly("Least price", "As it is");
            assertThat(drawn.figures().get(0).label()).isEqualTo("Price, EUR");
            // Panels of the make-up have to leave two slots each, those of the hall have 24 slots for seven poles.
            assertThat(drawn.figures().stream().filter(each -> each.label().equals("Spare slots")))
                    .singleElement()
                    .satisfies(row -> {
                        assertThat(row.cells().get(1).value()).isEqualTo("17");
                        assertThat(row.cells().get(1).note()).isEqualTo("of 24 slots");
                    });
            assertThat(drawn.headlines()).hasSize(2);
        }

        @Test
        void areFramedWithoutARightToAnything() {
            String policy = routes.piece("/offered/" + drawn().drawn() + "/offer.html")
                    .orElseThrow()
                    .policy()
                    .orElseThrow();

            assertThat(policy).contains("default-src 'none'", "sandbox;", "frame-ancestors 'self'");
            assertThat(policy).doesNotContain("script-src", "allow-");
        }

        @ParameterizedTest
        @ValueSource(strings = {"../x", "a/b", ".x"})
        void goIntoNoOtherFolder(String name) {
            int drawn = drawn().drawn();

            assertThatThrownBy(
                            () -> asked("/api/offer/write", "{\"drawn\": " + drawn + ", \"folder\": \"" + name + "\"}"))
                    .hasMessageContaining("can be called");
        }

        @Test
        void needANameOfItsOwnForEach() {
            assertThatThrownBy(() -> asked(
                            "/api/offer/draw",
                            "{\"alternates\": [{\"name\": \"A\", \"files\": \"least-usual\"}, {\"name\": \"A\"}]}"))
                    .hasMessageContaining("a name of its own for each alternate");
        }

        @Test
        void thatAreForgottenAreNotWritten() {
            int first = drawn().drawn();
            drawn();
            drawn();
            drawn();

            assertThat(routes.piece("/offered/" + first + "/offer.html")).isEmpty();
            assertThatThrownBy(() -> asked("/api/offer/write", "{\"drawn\": " + first + "}"))
                    .hasMessageContaining("drawn anew");
        }
    }
}
