package evenrise.solver.recording;

import evenrise.model.contract.Harmless;
import evenrise.model.project.Phase;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A recording in the common format for transient data exchange (COMTRADE, IEC 60255-24 and IEEE C37.111, editions of 1999 and
 * 2013, from memory): a configuration beside its data, as text, as integers of 16 or 32 bits or as floats of 32.
 */
final class ComtradeFile {
    private static final int MOST_CHANNELS = 10_000;
    private static final int MISSING_16 = -32768;
    private static final double MICRO = 1e-6;

    private enum Data {
        ASCII,
        BINARY,
        BINARY32,
        FLOAT32
    }

    /** One analog channel; what is recorded is a·x + b, in its unit, of the primary or the secondary side. */
    private record Channel(String id, String phase, String unit, double a, double b, double toPrimary) {
        double amps(double raw) {
            double scale = unit.equals("ka") ? 1000 : unit.equals("ma") ? 0.001 : 1;
            return (a * raw + b) * scale * toPrimary;
        }
    }

    private record Rate(double hertz, long lastSample) {}

    private final Path data;
    private final List<Channel> analog = new ArrayList<>();
    private final Map<Phase, Integer> currents = new EnumMap<>(Phase.class);
    private final List<Rate> rates = new ArrayList<>();
    private int digitals;
    private Data kind = Data.ASCII;
    private double timeFactor = 1;
    private double frequencyHertz;

    private ComtradeFile(Path data) {
        this.data = data;
    }

    static boolean isOne(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".cfg") || name.endsWith(".dat");
    }

    /** @throws IOException with a message for the user */
    static ComtradeFile of(Path file) throws IOException {
        ComtradeFile it = new ComtradeFile(beside(file, "dat"));
        it.configure(beside(file, "cfg"));
        return it;
    }

    private static Path beside(Path file, String ending) throws IOException {
        String name = file.getFileName().toString();
        String stem = name.substring(0, name.length() - 4);
        for (String each : List.of(ending, ending.toUpperCase(Locale.ROOT))) {
            Path found = file.resolveSibling(stem + "." + each);
            if (Files.exists(found)) {
                return found;
            }
        }
        throw new IOException("there is no " + Harmless.shown(stem) + "." + ending
                + " beside it: a recording of this format is a .cfg and a .dat");
    }

    private void configure(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file, StandardCharsets.ISO_8859_1);
        int at = 1;
        try {
            String[] counts = cells(lines.get(at++));
            int analogs = Integer.parseInt(counts[1].replaceAll("\\D", ""));
            digitals = Integer.parseInt(counts[2].replaceAll("\\D", ""));
            if (analogs + digitals > MOST_CHANNELS) {
                throw new IOException("it has more than " + MOST_CHANNELS + " channels");
            }
            for (int i = 0; i < analogs; i++) {
                analog.add(channel(cells(lines.get(at++))));
            }
            at += digitals;
            frequencyHertz = Double.parseDouble(lines.get(at++).strip());
            int count = Integer.parseInt(lines.get(at++).strip());
            for (int i = 0; i < Math.max(1, count); i++) {
                String[] rate = cells(lines.get(at++));
                if (count > 0 && Double.parseDouble(rate[0]) > 0) {
                    rates.add(new Rate(Double.parseDouble(rate[0]), Long.parseLong(rate[1])));
                }
            }
            at += 2;
            kind = Data.valueOf(lines.get(at++).strip().toUpperCase(Locale.ROOT));
            String factor = at < lines.size() ? lines.get(at).strip() : "";
            timeFactor = factor.isEmpty() ? 1 : Double.parseDouble(factor);
        } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
            throw new IOException(
                    "its configuration cannot be read at line " + at
                            + ". Expected are station, channels, frequency, rates, two times, and ASCII, BINARY, BINARY32 or"
                            + " FLOAT32",
                    e);
        }
        phases();
    }

    private static String[] cells(String line) {
        String[] cells = line.split(",", -1);
        for (int i = 0; i < cells.length; i++) {
            cells[i] = cells[i].strip();
        }
        return cells;
    }

    /** An, ch_id, ph, ccbm, uu, a, b, skew, min, max, primary, secondary, PS; the last three since 1999. */
    private static Channel channel(String[] cells) {
        boolean isSecondary = cells.length > 12 && cells[12].equalsIgnoreCase("s");
        double ratio = isSecondary ? Double.parseDouble(cells[10]) / Double.parseDouble(cells[11]) : 1;
        return new Channel(
                cells[1],
                cells[2],
                cells[4].toLowerCase(Locale.ROOT),
                Double.parseDouble(cells[5]),
                Double.parseDouble(cells[6]),
                Double.isFinite(ratio) && ratio > 0 ? ratio : 1);
    }

    private void phases() throws IOException {
        for (int i = 0; i < analog.size(); i++) {
            Channel each = analog.get(i);
            int at = i;
            if (each.unit().matches("[km]?a")) {
                RecordingColumns.phase(each.phase().toLowerCase(Locale.ROOT))
                        .or(() -> RecordingColumns.phase(each.id().toLowerCase(Locale.ROOT)))
                        .ifPresent(phase -> currents.putIfAbsent(phase, at));
            }
        }
        if (currents.isEmpty()) {
            throw new IOException("no channel is a current of phase A, B or C (unit A, kA or mA)");
        }
    }

    Phase[] phasesInOrder() {
        return currents.keySet().toArray(Phase[]::new);
    }

    /** How each channel is read, for people. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        currents.forEach((phase, at) ->
                words.add("channel '" + Harmless.shown(analog.get(at).id()) + "': current of phase " + phase));
        words.add("data as " + kind);
        return words;
    }

    /** As the recorder states it; empty where it does not. */
    Optional<Double> frequency() {
        return Optional.of(frequencyHertz).filter(each -> each > 0);
    }

    /** @throws IOException with a message for the user */
    void stream(SampleSink sink) throws IOException {
        if (kind == Data.ASCII) {
            text(sink);
        } else {
            binary(sink);
        }
    }

    private double seconds(long sample, double stamp) {
        if (rates.isEmpty()) {
            return stamp * timeFactor * MICRO;
        }
        double seconds = 0;
        long done = 0;
        for (Rate each : rates) {
            boolean isLast = each == rates.get(rates.size() - 1);
            if (sample <= each.lastSample() || isLast) {
                return seconds + (sample - 1 - done) / each.hertz();
            }
            seconds += (each.lastSample() - done) / each.hertz();
            done = each.lastSample();
        }
        return seconds;
    }

    private void text(SampleSink sink) throws IOException {
        double[] amps = new double[currents.size()];
        long line = 0;
        try (BufferedReader in =
                new BufferedReader(new InputStreamReader(Files.newInputStream(data), StandardCharsets.ISO_8859_1))) {
            for (String each = in.readLine(); each != null; each = in.readLine()) {
                line++;
                if (each.isBlank() || each.startsWith("\u001a")) {
                    continue;
                }
                String[] cells = each.split(",", -1);
                int k = 0;
                for (int at : currents.values()) {
                    amps[k++] = analog.get(at).amps(number(cells, at + 2, line));
                }
                String stamp = cells.length > 1 ? cells[1].strip() : "";
                sink.add(seconds((long) number(cells, 0, line), stamp.isEmpty() ? 0 : number(cells, 1, line)), amps);
            }
        }
    }

    private static double number(String[] cells, int at, long line) throws IOException {
        try {
            return Double.parseDouble(cells[at].strip());
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
            throw new IOException("line " + line + " of its data has no number at place " + (at + 1), e);
        }
    }

    private void binary(SampleSink sink) throws IOException {
        int width = kind == Data.BINARY ? 2 : 4;
        int words = (digitals + 15) / 16;
        byte[] record = new byte[8 + width * analog.size() + 2 * words];
        ByteBuffer bytes = ByteBuffer.wrap(record).order(ByteOrder.LITTLE_ENDIAN);
        double[] amps = new double[currents.size()];
        long sample = 0;
        try (DataInputStream in = new DataInputStream(new BufferedInputStream(Files.newInputStream(data), 1 << 16))) {
            while (true) {
                in.readFully(record);
                sample++;
                int k = 0;
                for (int at : currents.values()) {
                    amps[k++] = analog.get(at).amps(raw(bytes, 8 + width * at));
                }
                sink.add(seconds(sample, Integer.toUnsignedLong(bytes.getInt(4))), amps);
            }
        } catch (EOFException e) {
            // The end: an unfinished record at it is none.
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private double raw(ByteBuffer bytes, int at) {
        return switch (kind) {
            case BINARY -> bytes.getShort(at) == MISSING_16 ? 0 : bytes.getShort(at);
            case BINARY32 -> bytes.getInt(at) == Integer.MIN_VALUE ? 0 : bytes.getInt(at);
            case FLOAT32, ASCII -> Float.isFinite(bytes.getFloat(at)) ? bytes.getFloat(at) : 0;
        };
    }
}
