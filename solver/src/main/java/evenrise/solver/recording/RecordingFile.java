package evenrise.solver.recording;

import evenrise.model.intake.RecorderColumns;
import evenrise.model.observation.Recording;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A recording out of whatever file a recorder wrote: a table of values or COMTRADE, of rms values or of waves, however long.
 * What is long is streamed, in memory that does not grow.
 */
public final class RecordingFile {
    /** Shorter tables are read whole, which tells better what is wrong with them, and knows units in cells. */
    private static final long WHOLE_BYTES = 4L << 20;

    /** So are those of no more than this that are not read otherwise: they take ten times their length. */
    private static final long MOST_WHOLE_BYTES = 32L << 20;

    private static final int HEAD_BYTES = 1 << 16;

    /** That many are kept: eleven days at one a second, six hours at fifty. */
    private static final int MOST_SAMPLES = 1 << 20;

    private RecordingFile() {}

    /**
     * @param said which columns are what, as somebody has said of tables with such headers
     * @param frequencyHertz of the supply, where the file states none
     * @param fromSeconds what is before is left out, by the recorder's clock; likewise what is after {@code toSeconds}
     * @throws IOException with a message for the user
     */
    public static RecordingCsv.Read read(
            Path file, List<RecorderColumns> said, double frequencyHertz, double fromSeconds, double toSeconds)
            throws IOException {
        if (ComtradeFile.isOne(file)) {
            ComtradeFile recorded = ComtradeFile.of(file);
            RmsSeries series = new RmsSeries(
                    recorded.phasesInOrder(),
                    1 / recorded.frequency().orElse(frequencyHertz),
                    fromSeconds,
                    toSeconds,
                    MOST_SAMPLES);
            recorded.stream(series);
            return finished(series, recorded.words());
        }
        byte[] head = head(file);
        RecordingCsv.Shape shape = RecordingCsv.shape(TextTable.decoded(head), said);
        boolean isWave = shape.columns().length > 0 && shape.intervalSeconds() < 1.0 / 400;
        boolean isCut = Double.isFinite(fromSeconds) || Double.isFinite(toSeconds);
        if (shape.columns().length == 0 || Files.size(file) <= WHOLE_BYTES && !isWave && !isCut) {
            if (Files.size(file) > MOST_WHOLE_BYTES) {
                throw new IOException(RecordingHeaders.question(table(head)));
            }
            return whole(file, said);
        }
        RmsSeries series = new RmsSeries(shape.phases(), 1 / frequencyHertz, fromSeconds, toSeconds, MOST_SAMPLES);
        try {
            new StreamedCsv(shape, series).stream(file);
        } catch (IOException e) {
            if (Files.size(file) > MOST_WHOLE_BYTES || isWave || isCut) {
                throw e;
            }
            return whole(file, said);
        }
        return finished(series, Arrays.asList(shape.words()));
    }

    private static RecordingCsv.Read whole(Path file, List<RecorderColumns> said) throws IOException {
        return RecordingCsv.read(TextTable.decoded(Files.readAllBytes(file)), said);
    }

    /**
     * A wave about some moments.
     *
     * @param said which columns are what, as somebody has said of tables with such headers
     * @param spans from and to by the recorder's clock, rising
     * @throws IOException with a message for the user
     */
    public static List<RecordedWave> waves(Path file, List<RecorderColumns> said, List<double[]> spans)
            throws IOException {
        if (ComtradeFile.isOne(file)) {
            ComtradeFile recorded = ComtradeFile.of(file);
            WaveWindows windows = new WaveWindows(recorded.phasesInOrder(), spans);
            recorded.stream(windows);
            return windows.waves();
        }
        RecordingCsv.Shape shape = RecordingCsv.shape(TextTable.decoded(head(file)), said);
        WaveWindows windows = new WaveWindows(shape.phases(), spans);
        new StreamedCsv(shape, windows).stream(file);
        return windows.waves();
    }

    /**
     * The columns of a table, and how each is read; none where the file says itself what is in it.
     *
     * @throws IOException with a message for the user
     */
    public static List<RecordedColumn> columns(Path file, List<RecorderColumns> said) throws IOException {
        return ComtradeFile.isOne(file) ? List.of() : RecordingHeaders.columns(table(head(file)), said);
    }

    private static ReadTable table(byte[] head) throws IOException {
        return TextTable.of(TextTable.decoded(head), HEAD_BYTES).table();
    }

    private static RecordingCsv.Read finished(RmsSeries series, List<String> columns) {
        List<String> words = new ArrayList<>(columns);
        try {
            Recording recording = series.recording();
            if (series.isWave()) {
                words.add("waves, taken as one rms value a period");
            }
            if (series.thinned() > 1) {
                words.add("so long that " + series.thinned()
                        + " values became one; --from and --to cut out the minutes about the start");
            }
            return new RecordingCsv.Read(Optional.of(recording), words, List.of(), series.isWave());
        } catch (IllegalArgumentException e) {
            return new RecordingCsv.Read(Optional.empty(), words, List.of(e.getMessage() + "."));
        }
    }

    /** Whole lines from its beginning. */
    private static byte[] head(Path file) throws IOException {
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(HEAD_BYTES);
        }
        int end = bytes.length;
        while (bytes.length == HEAD_BYTES && end > 0 && bytes[end - 1] != '\n') {
            end--;
        }
        return end == 0 ? bytes : Arrays.copyOf(bytes, end);
    }
}
