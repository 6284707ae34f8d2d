package evenrise.solver.recording;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.intake.RecorderColumns;
import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class RecordingCsvTest {
    private static RecordingCsv.Read read(String head, IntFunction<String> row) throws IOException {
        return RecordingCsv.read(
                head + "\n" + IntStream.range(0, 20).mapToObj(row).collect(Collectors.joining("\n")), List.of());
    }

    private static Recording recording(String head, IntFunction<String> row) throws IOException {
        RecordingCsv.Read read = read(head, row);
        assertThat(read.problems()).isEmpty();
        return read.recording().orElseThrow();
    }

    @Nested
    class Columns {
        @Test
        void areFoundByUsualNames() throws IOException {
            Recording recording = recording("time_s,A,B,C", i -> 0.1 * i + ",1.5,2,3");

            assertThat(recording.amps().keySet()).containsExactly(Phase.A, Phase.B, Phase.C);
            assertThat(recording.amps().get(Phase.A)[7]).isEqualTo(1.5);
            assertThat(recording.seconds()[19]).isEqualTo(0.1 * 19);
        }

        @Test
        void mayBeOfOnePhaseInMilliamperes() throws IOException {
            Recording recording = recording("t,I2 (mA)", i -> i + ",250");

            assertThat(recording.amps().keySet()).containsExactly(Phase.B);
            assertThat(recording.amps().get(Phase.B)[0]).isEqualTo(0.25);
        }

        @Test
        void areNotThoseOfVoltages() throws IOException {
            Recording recording = recording("timestamp,V L1 (V),I L1 (A)", i -> i + ",230,4");

            assertThat(recording.amps().get(Phase.A)[0]).isEqualTo(4);
        }

        @Test
        void mayStandBelowLinesAboutTheRecorder() throws IOException {
            Recording recording = recording("Serial;1234\nRange;100 A\n\ntime;L1;L2;L3", i -> i + ";1,5;2,5;3,5");

            assertThat(recording.amps().get(Phase.C)[0]).isEqualTo(3.5);
        }

        @Test
        void areAskedForWhereThereAreNone() throws IOException {
            RecordingCsv.Read read = read("one,two", i -> i + ",1");

            assertThat(read.recording()).isEmpty();
            assertThat(read.problems()).singleElement().asString().contains("'one', 'two'", "Say it once");
        }

        @Test
        void areAskedForWhereThereIsNoRowOfHeaders() throws IOException {
            assertThat(read("0,1", i -> i + 1 + ",1").problems())
                    .singleElement()
                    .asString()
                    .contains("Name the columns time_s");
        }
    }

    @Nested
    class SaidColumns {
        private static final RecorderColumns SAID = RecorderColumns.builder()
                .time("Tick")
                .phaseA(Optional.of("Probe X"))
                .phaseB(Optional.empty())
                .phaseC(Optional.of("A"))
                .unitsPerSecond(OptionalDouble.of(50))
                .ampsPerUnit(OptionalDouble.of(100))
                .build();

        private static RecordingCsv.Read said(String head) throws IOException {
            return RecordingCsv.read(
                    head + "\n"
                            + IntStream.range(0, 20)
                                    .mapToObj(i -> i + ",0.02,0.03")
                                    .collect(Collectors.joining("\n")),
                    List.of(SAID));
        }

        @Test
        void countWhateverTheHeadersWouldTell() throws IOException {
            Recording recording =
                    said("recorder 7,,\ntick, Probe X ,A").recording().orElseThrow();

            assertThat(recording.seconds()[19]).isEqualTo(19 / 50.0);
            assertThat(recording.amps().keySet()).containsExactly(Phase.A, Phase.C);
            assertThat(recording.amps().get(Phase.A)[0]).isEqualTo(2);
            assertThat(recording.amps().get(Phase.C)[0]).isEqualTo(3);
        }

        @Test
        void areLeftWhereOneOfTheirHeadersIsMissing() throws IOException {
            Recording recording = said("time_s,Probe Y,A").recording().orElseThrow();

            assertThat(recording.amps().keySet()).containsExactly(Phase.A);
            assertThat(recording.amps().get(Phase.A)[0]).isEqualTo(0.03);
        }
    }

    @Nested
    class Times {
        @Test
        void mayBeDatesAndTimes() throws IOException {
            Recording recording = recording("timestamp,A", i -> String.format("2026-01-02 10:00:%02d.500,1", i));

            assertThat(recording.seconds()[1] - recording.seconds()[0]).isEqualTo(1);
        }

        @Test
        void mayBeMilliseconds() throws IOException {
            assertThat(recording("time (ms),A", i -> 20 * i + ",1").intervalSeconds())
                    .isEqualTo(0.02);
        }

        @Test
        void rise() throws IOException {
            RecordingCsv.Read read = read("t,A", i -> (i == 9 ? 3 : i) + ",1");

            assertThat(read.recording()).isEmpty();
            assertThat(read.problems()).containsExactly("sample 10 is not later than the one before.");
        }
    }

    @Test
    void saysInWhichLineACurrentIsNone() throws IOException {
        RecordingCsv.Read read = read("t,A", i -> i + (i == 4 ? ",off" : ",1"));

        assertThat(read.problems()).containsExactly("line 6: 'off' is no current.");
    }
}
