package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.rules.Layout;
import evenrise.solver.recording.DrawnStart;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A start of the lantern yard as built, drawn at 25 samples a second. */
class ObserveCommandTest {
    private static final Path YARD = Path.of("../datasets/lantern-yard");

    @TempDir
    private Path folder;

    private Layout layout;

    @BeforeEach
    void readThePlan() {
        layout = DrawnStart.yard();
    }

    /** @param without a load that does not come on */
    private Path recorded(String without) throws IOException {
        return Files.write(folder.resolve("start.csv"), DrawnStart.of(layout, "time_s,A,B,C", without));
    }

    private Shell.Result observe(String recording, String... rest) {
        List<String> arguments = new ArrayList<>(List.of(
                "observe",
                YARD.resolve("project.json").toString(),
                YARD.resolve("built.plan.json").toString(),
                recording));
        arguments.addAll(List.of(rest));
        return new Shell(SmallHall.sound()).run(arguments.toArray(String[]::new));
    }

    @Test
    void saysThatAStartIsAsPlanned() throws IOException {
        Shell.Result result = observe(recorded("").toString());

        assertThat(result.remarks()).isEmpty();
        assertThat(result.out())
                .contains("Recorded start at", "Nothing that could be seen is other than planned.", "'A': current of")
                .containsPattern("The command was given at 50\\.0[0-9]{2} s");
        assertThat(result.code()).isEqualTo(ExitCode.DONE);
    }

    @Test
    void namesALoadThatDoesNotComeOn() throws IOException {
        String dead = DrawnStart.alone(layout);

        Shell.Result result = observe(recorded(dead).toString());

        assertThat(result.out())
                .contains("Something is other than planned.", "does not come on")
                .containsPattern("(?m)^ *" + dead + " ");
        assertThat(result.code()).isEqualTo(ExitCode.RULES_BROKEN);
    }

    @Test
    void tellsSeveralRecordingsOfOneStartTogether() throws IOException {
        String dead = DrawnStart.alone(layout);
        Path second = Files.copy(recorded(""), folder.resolve("second.csv"));
        Path third = Files.copy(recorded(dead), folder.resolve("third.csv"));

        Shell.Result sound = observe(recorded("").toString(), "--again", second.toString());
        Shell.Result other =
                observe(recorded("").toString(), "--again", second.toString(), "--again", third.toString());

        assertThat(sound.out())
                .contains("All recordings together", "second.csv")
                // The same samples twice: nothing differs from one start to the next.
                .containsPattern("standard\\s+deviation of 0\\.0000 s");
        assertThat(sound.code()).isEqualTo(ExitCode.DONE);
        assertThat(other.out()).containsPattern("(?m)^ *third.csv +[0-9]+ +1 ");
        assertThat(other.code()).isEqualTo(ExitCode.RULES_BROKEN);
    }

    @Test
    void leavesOutOfThemWhatIsNoStartOfThePlan() throws IOException {
        List<String> flat = new ArrayList<>(List.of("time_s,A,B,C"));
        for (int i = 0; i < 2000; i++) {
            flat.add(i / 25.0 + ",1.0,1.0,1.0");
        }
        Path still = Files.write(folder.resolve("still.csv"), flat);

        Shell.Result result = observe(recorded("").toString(), "--again", still.toString());

        assertThat(result.out()).contains("1 of them not recognised as the start of this plan");
        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void refusesAPlaceThatIsNone() throws IOException {
        Shell.Result result = observe(recorded("").toString(), "--at", "NOWHERE");

        assertThat(result.code()).isEqualTo(ExitCode.USAGE);
        assertThat(result.err()).contains("no panel or node 'NOWHERE'");
    }

    @Test
    void saysWhatATableIsToHold() throws IOException {
        Path other = Files.writeString(folder.resolve("other.csv"), "one,two\n1,2\n");

        Shell.Result result = observe(other.toString());

        assertThat(result.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(result.err()).contains("'one', 'two'", "--column \"time=one\" --column \"A=two\"");
    }

    @Nested
    class Columns {
        private Path project;
        private Path recording;

        @BeforeEach
        void aRecorderWritesNamesOfItsOwn() throws IOException {
            project = Files.copy(YARD.resolve("project.json"), folder.resolve("yard.project.json"));
            recording = Files.write(
                    folder.resolve("log.csv"), DrawnStart.of(layout, "Zeitpunkt,Kanal 1,Kanal 2,Kanal 3", ""));
        }

        private Shell.Result observeOwn(String... rest) {
            List<String> arguments = new ArrayList<>(List.of(
                    "observe",
                    project.toString(),
                    YARD.resolve("built.plan.json").toString(),
                    recording.toString()));
            arguments.addAll(List.of(rest));
            return new Shell(SmallHall.sound()).run(arguments.toArray(String[]::new));
        }

        @Test
        void areAskedForOnceAndKeptBesideTheProject() throws IOException {
            assertThat(observeOwn().err()).contains("'Zeitpunkt', 'Kanal 1', 'Kanal 2', 'Kanal 3'");
            Shell.Result said = observeOwn(
                    "--column",
                    "time=Zeitpunkt",
                    "--column",
                    "A=Kanal 1",
                    "--column",
                    "b=Kanal 2",
                    "--column",
                    "C=Kanal 3");
            assertThat(said.err()).contains("kept in yard.recorders.json");
            assertThat(said.code()).isEqualTo(ExitCode.DONE);

            Shell.Result later = observeOwn();

            assertThat(later.remarks()).isEmpty();
            assertThat(later.out().replaceAll("\\s+", " "))
                    .contains("'Kanal 2': current of phase B", "as was said of recordings with these headers")
                    .contains("Nothing that could be seen is other than planned.");
            assertThat(folder.resolve("yard.recorders.json")).content().contains("\"phase_c\": \"Kanal 3\"");
        }

        @Test
        void thatAreSaidWronglyAreNotKept() {
            Shell.Result wrong = observeOwn("--column", "time=Zeitpunkt", "--column", "A=Kanal 7");

            assertThat(wrong.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(folder.resolve("yard.recorders.json")).doesNotExist();
        }

        @Test
        void meanTimeAndPhasesAlone() {
            assertThat(observeOwn("--column", "volts=Kanal 1").err())
                    .contains("'volts' is nothing that a column can mean");
            assertThat(observeOwn("--column", "A=Kanal 1").err()).contains("which column is the time");
            assertThat(observeOwn("--amps-per-unit", "10").err()).contains("go with --column");
        }
    }
}
