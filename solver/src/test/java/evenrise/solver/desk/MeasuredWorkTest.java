package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.measured.FieldChange.Kind;
import evenrise.model.measured.SiteVerdict;
import evenrise.model.project.Load;
import evenrise.solver.app.CommissionRequest;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.Source;
import evenrise.solver.desk.MeasuredAnswers.ChangeView;
import evenrise.solver.desk.MeasuredAnswers.MeasuredView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeasuredWorkTest {
    /** The first draws more than stated, the second less, the third nothing. */
    private static final String READ = "load,phase,running_a,idle_a\namp-1,A,9,8.2\namp-2,C,5,4.5\nlamp,B,0,0\n";

    @TempDir
    private Path folder;

    private Desk desk;
    private DeskRoutes routes;

    @BeforeEach
    void open() {
        DeskFiles files = DeskFiles.of(Hall.in(folder));
        desk = new Desk(files, Optional.of(Hall.state()), List.of());
        routes = new DeskRoutes(List.of(new MeasuredWork(desk, files, Hall.JOBS)));
    }

    private Record asked(String path, String body) {
        return routes.of("POST", "/api/measured/" + path).orElseThrow().answer(body.getBytes(StandardCharsets.UTF_8));
    }

    private MeasuredView seen() {
        return (MeasuredView) routes.of("GET", "/api/measured").orElseThrow().answer(new byte[0]);
    }

    private static String piece(String name, String text, boolean isFirst, boolean isLast) {
        String bytes = Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
        return "{\"name\": \"" + name + "\", \"bytes\": \"" + bytes + "\", \"first\": " + isFirst + ", \"last\": "
                + isLast + "}";
    }

    private MeasuredView handed(String name, String text) {
        asked("add", piece(name, text, true, true));
        return seen();
    }

    private double running(String load) {
        return desk.judged().state().project().loads().stream()
                .filter(each -> each.id().equals(load))
                .mapToDouble(Load::runningAmps)
                .findFirst()
                .orElseThrow();
    }

    private static ChangeView change(MeasuredView view, String load) {
        return view.found().orElseThrow().changes().stream()
                .filter(each -> each.load().equals(load) && each.field().equals("running_a"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void nothingIsSaidBeforeAnythingIsHandedOver() {
        assertThat(seen().state()).isEqualTo("empty");
        assertThat(seen().found()).isEmpty();
        assertThat(seen().places()).containsExactly("supply", "P1", "P2");
    }

    @Nested
    class Readings {
        @Test
        void areToldBesideThePlanAndChangeNothing() {
            MeasuredView view = handed("readings.csv", READ);

            assertThat(view.problems()).isEmpty();
            assertThat(view.files())
                    .singleElement()
                    .extracting(each -> each.kind())
                    .isEqualTo("sheet");
            assertThat(view.found().orElseThrow().verdict()).isEqualTo(SiteVerdict.DIFFERS);
            assertThat(view.found().orElseThrow().differences())
                    .anyMatch(each ->
                            each.subject().startsWith("lamp") && each.cause().contains("does not draw"));
            assertThat(running("amp-1")).isEqualTo(8);
            assertThat(desk.sheet().undo()).isEmpty();
        }

        @Test
        void comeInPiecesOfOneFile() {
            asked("add", piece("readings.csv", READ.substring(0, 40), true, false));
            assertThat(seen().state()).isEqualTo("empty");
            asked("add", piece("readings.csv", READ.substring(40), false, true));

            assertThat(seen().found()).isPresent();
        }

        @Test
        void sayInWhichLineOfWhichFileTheyCannotBeRead() {
            MeasuredView view = handed("monday.csv", "load,phase,running_a,idle_a\namp-1,A,many,1\n");

            assertThat(view.found()).isEmpty();
            assertThat(view.problems())
                    .singleElement()
                    .asString()
                    .startsWith("monday.csv line 2")
                    .contains("many");
        }

        @Test
        void areGoneWithTheirFile() {
            handed("readings.csv", READ);
            MeasuredView view = (MeasuredView) asked("remove", "{\"name\": \"readings.csv\"}");

            assertThat(view.state()).isEqualTo("empty");
        }
    }

    @Nested
    class Refit {
        @Test
        void raisesWithoutAWordAndLowersOnlyWhereFullUseIsConfirmed() {
            MeasuredView view = handed("readings.csv", READ);

            // 3 % of the reading and 0.05 A, where no meter is named.
            assertThat(change(view, "amp-1").afterAmps()).isCloseTo(9 + 0.27 + 0.05, within(1e-3));
            assertThat(change(view, "amp-2").kind()).isEqualTo(Kind.KEPT);
            assertThat(change(view, "amp-2").asksFullUse()).isTrue();
            assertThat(change(view, "amp-2").afterAmps()).isEqualTo(9);

            MeasuredView confirmed = (MeasuredView) asked("confirm", "{\"loads\": [\"amp-2\", \"lamp\"]}");

            assertThat(change(confirmed, "amp-2").kind()).isEqualTo(Kind.LOWERED);
            assertThat(change(confirmed, "amp-2").isConfirmed()).isTrue();
            assertThat(change(confirmed, "amp-2").afterAmps()).isCloseTo(5.2, within(1e-3));
            // What does not draw lowers nothing, whoever confirms what.
            assertThat(change(confirmed, "lamp").afterAmps()).isEqualTo(2);
        }

        @Test
        void comesIntoTheProjectAsOneChangeThatCanBeTakenBack() {
            handed("readings.csv", READ);
            asked("take", "{}");

            assertThat(running("amp-1")).isCloseTo(9.32, within(1e-3));
            assertThat(running("amp-2")).isEqualTo(9);
            assertThat(seen().state()).isEqualTo("taken");
            assertThatThrownBy(() -> asked("take", "{}")).hasMessageContaining("in the project now");
            assertThatThrownBy(() -> asked("add", piece("more.csv", READ, true, true)))
                    .hasMessageContaining("Begin another visit first");

            // Whatever else is changed afterwards, nothing is taken twice.
            desk.change(
                    "another name",
                    now -> now.state()
                            .under(
                                    now.state().project().withName("Other hall"),
                                    now.state().notes()));
            assertThat(seen().state()).isEqualTo("taken");
            desk.undo();
            desk.undo();

            assertThat(running("amp-1")).isEqualTo(8);
            assertThat(seen().state()).isEqualTo("open");
        }

        @Test
        void isTheSameInTheFileAsThatOfTheCommand() throws Exception {
            handed("readings.csv", READ);
            asked("confirm", "{\"loads\": [\"amp-2\"]}");
            asked("take", "{}");
            Path readings = Files.writeString(folder.resolve("readings.csv"), READ);
            var plant = Hall.JOBS
                    .commission(
                            new CommissionRequest(
                                    Source.file(folder.resolve("project.json")),
                                    Source.file(folder.resolve("project.plan.json")),
                                    List.of(readings),
                                    Optional.empty(),
                                    Set.of("amp-2"),
                                    false,
                                    Optional.empty(),
                                    Optional.empty(),
                                    Optional.empty(),
                                    Optional.empty()),
                            JobControl.NONE)
                    .plant();

            assertThat(desk.judged().state().project().loads())
                    .isEqualTo(plant.refitted().project().loads());
        }

        /** 8 A are stated, at most 5 A were read on two days. */
        @Test
        void takesAUseThatTwoDaysReadAsASceneBesideFullUse() {
            handed("readings.csv", "load,phase,running_a,date\namp-1,A,5.0,2026-03-14\namp-1,A,4.8,2026-03-21\n");
            asked("circumstances", "{\"use\": \"rehearsal\"}");

            assertThat(seen().use()).isEqualTo("rehearsal");
            asked("take", "{}");

            assertThat(desk.judged().state().project().scenes())
                    .extracting(each -> each.id())
                    .containsExactly("full-use", "rehearsal");
            assertThat(running("amp-1")).isEqualTo(8);
        }

        @Test
        void asksForAReading() {
            assertThatThrownBy(() -> asked("take", "{}")).hasMessageContaining("nothing");
        }
    }

    @Nested
    class Recordings {
        private static final String LOG = "Uhr,Kanal 1\n0,1\n1,1\n2,1\n";

        @Test
        void areAskedForTheirColumnsWhichAreKeptBesideTheProject() {
            MeasuredView view = handed("log.csv", LOG);

            assertThat(view.columns().orElseThrow().isTold()).isFalse();
            assertThat(view.columns().orElseThrow().columns())
                    .extracting(each -> each.header() + " " + each.example())
                    .containsExactly("Uhr 0", "Kanal 1 1");
            assertThat(view.problems()).singleElement().asString().contains("Say it above, once");

            MeasuredView said = (MeasuredView) asked(
                    "columns",
                    "{\"columns\": [{\"header\": \"Uhr\", \"means\": \"time\"}, {\"header\": \"Kanal 1\", \"means\":"
                            + " \"B\"}], \"amps_per_unit\": 100}");

            assertThat(said.columns().orElseThrow().isTold()).isTrue();
            // Three samples tell no step from noise.
            assertThat(said.problems()).singleElement().asString().contains("3 samples");
            assertThat(folder.resolve("project.recorders.json"))
                    .content()
                    .contains("\"phase_b\": \"Kanal 1\"", "\"amps_per_unit\": 100");
        }

        @Test
        void cannotHaveTwoColumnsOfOneMeaning() {
            handed("log.csv", LOG);

            assertThatThrownBy(() -> asked(
                            "columns",
                            "{\"columns\": [{\"header\": \"Uhr\", \"means\": \"A\"}, {\"header\": \"Kanal 1\","
                                    + " \"means\": \"A\"}]}"))
                    .hasMessageContaining("two columns cannot both be 'A'");
        }

        @Test
        void takeThePlaceOfEarlierOnes() {
            handed("monday.csv", LOG);
            MeasuredView view = handed("tuesday.csv", LOG);

            assertThat(view.files())
                    .singleElement()
                    .extracting(each -> each.name())
                    .isEqualTo("tuesday.csv");
        }
    }

    @Nested
    class Names {
        @ParameterizedTest
        @CsvSource({
            "../../etc/passwd.csv, passwd.csv",
            "C:\\temp\\START.CSV, START.csv",
            "a<b>.xlsx, a_b_.xlsx",
            "..hidden.csv, hidden.csv",
            "con.csv, _con.csv"
        })
        void leadNowhere(String given, String kept) {
            assertThat(AsideFolder.harmless(given)).isEqualTo(kept);
        }

        @ParameterizedTest
        @ValueSource(strings = {"..", "/", "...", " "})
        void thatAreNoneAreRefused(String given) {
            assertThatThrownBy(() -> AsideFolder.harmless(given)).hasMessageContaining("is no name of a file");
        }

        @ParameterizedTest
        @ValueSource(strings = {"../out", "a/b", "", "."})
        void ofTheRecordStayInTheFolder(String given) {
            handed("readings.csv", READ);

            assertThatThrownBy(() -> asked("record", "{\"name\": \"" + given + "\"}"))
                    .hasMessageContaining("nothing here can be called");
        }
    }

    @Test
    void bytesThatAreNoneAreRefused() {
        assertThatThrownBy(() -> asked("add", "{\"name\": \"a.csv\", \"bytes\": \"%%\"}"))
                .hasMessageContaining("no Base64");
    }

    @Test
    void moreFilesThanAnybodyHasAreRefused() {
        for (int i = 0; i < 24; i++) {
            asked("add", piece("sheet " + i + ".csv", READ, true, true));
        }

        assertThatThrownBy(() -> asked("add", piece("one more.csv", READ, true, true)))
                .hasMessageContaining("more than 24 files");
    }

    @Test
    void aDayIsOne() {
        assertThatThrownBy(() -> asked("circumstances", "{\"day\": \"14.3.\"}")).hasMessageContaining("is no day");
    }
}
