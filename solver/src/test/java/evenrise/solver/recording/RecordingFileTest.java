package evenrise.solver.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A wave of 10 A rms on phase A that becomes 20 A after a second, and half of that on phase B, at 4 kHz for two seconds. */
class RecordingFileTest {
    private static final int SAMPLES = 8000;
    private static final double RATE = 4000;

    @TempDir
    private Path folder;

    private static double amps(int sample, int phase) {
        double rms = (sample < SAMPLES / 2 ? 10 : 20) / (phase + 1.0);
        return rms * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * sample / RATE - phase * 2 * Math.PI / 3);
    }

    private static RecordingCsv.Read read(Path file) throws IOException {
        return RecordingFile.read(file, List.of(), 50, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    private static void isTheWave(Recording recording) {
        double[] a = recording.amps().get(Phase.A);
        double[] b = recording.amps().get(Phase.B);
        assertThat(recording.intervalSeconds()).isCloseTo(0.02, within(1e-6));
        assertThat(a[10]).isCloseTo(10, within(0.02));
        assertThat(b[10]).isCloseTo(5, within(0.02));
        assertThat(a[a.length - 10]).isCloseTo(20, within(0.02));
        int step = 0;
        while (a[step] < 15) {
            step++;
        }
        assertThat(recording.seconds()[step] - recording.seconds()[0]).isCloseTo(1, within(0.03));
    }

    private Path configured(String kind, double a, String side) throws IOException {
        String channel = "%d,I L%d,%s,hall,A," + a + ",0,0,-32767,32767,%s\r\n";
        Files.writeString(
                folder.resolve("start.cfg"),
                "Hall,recorder,1999\r\n3,2A,1D\r\n"
                        + String.format(Locale.ROOT, channel, 1, 1, "A", side)
                        + String.format(Locale.ROOT, channel, 2, 2, "B", side)
                        + "1,breaker,,,0\r\n50\r\n1\r\n" + RATE + "," + SAMPLES
                        + "\r\n14/03/2026,10:00:00.000000\r\n14/03/2026,10:00:01.000000\r\n" + kind + "\r\n1\r\n");
        return folder.resolve("start.dat");
    }

    @Nested
    class Comtrade {
        @Test
        void isReadAsText() throws IOException {
            StringBuilder data = new StringBuilder();
            for (int i = 0; i < SAMPLES; i++) {
                data.append(String.format(
                        Locale.ROOT,
                        "%d,%d,%d,%d,0\r%n",
                        i + 1,
                        250L * i,
                        Math.round(amps(i, 0) / 0.01),
                        Math.round(amps(i, 1) / 0.01)));
            }
            Files.writeString(configured("ASCII", 0.01, "1,1,P"), data);

            isTheWave(read(folder.resolve("start.cfg")).recording().orElseThrow());
        }

        @ParameterizedTest
        @ValueSource(strings = {"BINARY", "BINARY32", "FLOAT32"})
        void isReadAsBinary(String kind) throws IOException {
            ByteBuffer data = ByteBuffer.allocate(SAMPLES * 20).order(ByteOrder.LITTLE_ENDIAN);
            for (int i = 0; i < SAMPLES; i++) {
                data.putInt(i + 1).putInt(250 * i);
                for (int phase = 0; phase < 2; phase++) {
                    double raw = amps(i, phase) / 0.01;
                    switch (kind) {
                        case "BINARY" -> data.putShort((short) Math.round(raw));
                        case "BINARY32" -> data.putInt((int) Math.round(raw));
                        default -> data.putFloat((float) raw);
                    }
                }
                data.putShort((short) 0);
            }
            byte[] bytes = new byte[data.position()];
            data.flip().get(bytes);
            Files.write(configured(kind, 0.01, "1,1,P"), bytes);

            RecordingCsv.Read read = read(folder.resolve("start.dat"));

            isTheWave(read.recording().orElseThrow());
            assertThat(read.columns()).contains("channel 'I L1': current of phase A", "data as " + kind);
        }

        @Test
        void tellsWhatFlowsOnThePrimarySideOfATransformer() throws IOException {
            // A hundred to five: what is recorded as 0.5 A flows as 10 A.
            StringBuilder data = new StringBuilder();
            for (int i = 0; i < SAMPLES; i++) {
                data.append(i + 1)
                        .append(",,")
                        .append(amps(i, 0))
                        .append(',')
                        .append(amps(i, 1))
                        .append(",0\n");
            }
            Files.writeString(configured("ASCII", 0.05, "100,5,S"), data);

            isTheWave(read(folder.resolve("start.cfg")).recording().orElseThrow());
        }

        @Test
        void isRefusedWithoutItsOtherHalf() throws IOException {
            configured("ASCII", 1, "1,1,P");

            assertThatThrownBy(() -> read(folder.resolve("start.cfg")))
                    .hasMessageContaining("there is no start.dat beside it");
        }

        @Test
        void isRefusedWithoutCurrents() throws IOException {
            Files.writeString(configured("ASCII", 1, "1,1,P"), "1,0,1,1,0\n");
            Path configuration = folder.resolve("start.cfg");
            Files.writeString(configuration, Files.readString(configuration).replace(",hall,A,", ",hall,V,"));

            assertThatThrownBy(() -> read(configuration)).hasMessageContaining("no channel is a current");
        }

        @Test
        void saysWhereItsConfigurationIsNone() throws IOException {
            Files.writeString(folder.resolve("start.dat"), "");
            Path configuration =
                    Files.writeString(folder.resolve("start.cfg"), "Hall,recorder,1999\n2,1A,0D\nnonsense\n");

            assertThatThrownBy(() -> read(configuration)).hasMessageContaining("cannot be read at line 3");
        }
    }

    @Nested
    class ATableOfValues {
        private Path waves() throws IOException {
            StringBuilder table = new StringBuilder("time_s;A;B\n");
            for (int i = 0; i < SAMPLES; i++) {
                table.append(String.format(Locale.ROOT, "%.5f;%.3f;%.3f%n", i / RATE, amps(i, 0), amps(i, 1)));
            }
            return Files.writeString(folder.resolve("waves.csv"), table);
        }

        @Test
        void ofWavesBecomesRmsValues() throws IOException {
            RecordingCsv.Read read = read(waves());

            isTheWave(read.recording().orElseThrow());
            assertThat(read.columns()).contains("waves, taken as one rms value a period");
        }

        @Test
        void givesTheWaveAboutSomeMoments() throws IOException {
            List<RecordedWave> waves = RecordingFile.waves(
                    waves(), List.of(), List.of(new double[] {0.2, 0.3}, new double[] {0.25, 0.26}));

            assertThat(waves).hasSize(2);
            assertThat(waves.get(0).seconds()).hasSize(401);
            assertThat(waves.get(1).amps().get(Phase.A)[0]).isCloseTo(amps(1000, 0), within(0.001));
        }

        @Test
        void isCutToWhatIsAskedFor() throws IOException {
            Recording recording = RecordingFile.read(waves(), List.of(), 50, 0.5, 1.5)
                    .recording()
                    .orElseThrow();

            assertThat(recording.seconds()[0]).isBetween(0.5, 0.53);
            assertThat(recording.seconds()[recording.seconds().length - 1]).isBetween(1.47, 1.5);
        }

        /** Longer than what is read whole at once. */
        private Path dates(String unit) throws IOException {
            StringBuilder table = new StringBuilder("timestamp,I L1 (A)\n");
            for (int i = 0; i < 200_000; i++) {
                table.append(LocalDateTime.of(2026, 3, 14, 9, 0, 1).plusSeconds(i))
                        .append(i < 100_000 ? ",1.5" : ",2.5")
                        .append(unit)
                        .append('\n');
            }
            return Files.writeString(folder.resolve("week.csv"), table);
        }

        @ParameterizedTest
        @ValueSource(strings = {"", " A"})
        void isReadAtLength(String unit) throws IOException {
            Path file = dates(unit);

            Recording recording = read(file).recording().orElseThrow();

            assertThat(Files.size(file)).isGreaterThan(1 << 22);
            assertThat(recording.seconds()).hasSize(200_000);
            assertThat(recording.seconds()[199_999] - recording.seconds()[0]).isEqualTo(199_999);
            assertThat(recording.amps().get(Phase.A)[99_999]).isEqualTo(1.5);
            assertThat(recording.amps().get(Phase.A)[100_000]).isEqualTo(2.5);
        }

        @Test
        void saysWhichRowsCannotBeRead() throws IOException {
            Path file = waves();
            Files.writeString(file, Files.readString(file).replace("0.25000;", "soon;"));

            assertThatThrownBy(() -> read(file)).hasMessageContaining("1 of 8000 rows cannot be read: line 1002;");
        }
    }
}
