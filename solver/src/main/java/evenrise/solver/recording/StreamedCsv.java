package evenrise.solver.recording;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.OptionalDouble;

/** A table of values of any length, row by row, by columns that its head shows. Plain numbers are read without texts. */
final class StreamedCsv {
    private static final int BLOCK = 1 << 17;
    private static final int LONGEST_CELL = 64;
    private static final int MOST_PROBLEMS = 20;
    private static final int MOST_BAD_ROWS = 1000;
    private static final double[] POWERS = new double[19];

    static {
        POWERS[0] = 1;
        for (int i = 1; i < POWERS.length; i++) {
            POWERS[i] = 10 * POWERS[i - 1];
        }
    }

    private final RecordingCsv.Shape shape;
    private final SampleSink sink;
    private final PlainMoment moments = new PlainMoment();
    private final byte[] cell = new byte[LONGEST_CELL];
    private int length;
    private int column;
    private long line = 1;
    private double seconds = Double.NaN;
    private final double[] amps;
    private final int[] placeOf;
    private int read;
    private long rows;
    private int bad;
    private final StringBuilder problems = new StringBuilder();

    StreamedCsv(RecordingCsv.Shape shape, SampleSink sink) {
        this.shape = shape;
        this.sink = sink;
        this.amps = new double[shape.columns().length];
        int last = shape.time();
        for (int each : shape.columns()) {
            last = Math.max(last, each);
        }
        this.placeOf = new int[last + 1];
        Arrays.fill(placeOf, -1);
        placeOf[shape.time()] = amps.length;
        for (int i = 0; i < amps.length; i++) {
            placeOf[shape.columns()[i]] = i;
        }
    }

    /** @throws IOException with a message for the user */
    void stream(Path file) throws IOException {
        byte[] block = new byte[BLOCK];
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), BLOCK)) {
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                for (int i = 0; i < n; i++) {
                    take(block[i]);
                }
            }
        }
        if (column > 0 || length > 0) {
            endOfRow();
        }
        if (bad > 0) {
            throw new IOException(bad + " of " + rows + " rows cannot be read:" + problems);
        }
    }

    private void take(byte c) throws IOException {
        if (c == '\n') {
            endOfRow();
        } else if (c == shape.delimiter()) {
            endOfCell();
            column++;
        } else if (c != '\r' && c != '"' && line > shape.headerLine()) {
            if (length < LONGEST_CELL) {
                cell[length] = c;
            }
            length++;
        }
    }

    private void endOfCell() {
        if (line > shape.headerLine() && column < placeOf.length && placeOf[column] >= 0) {
            int place = placeOf[column];
            OptionalDouble value = value(place == amps.length);
            if (value.isPresent()) {
                read++;
                if (place == amps.length) {
                    seconds = value.getAsDouble();
                } else {
                    amps[place] = value.getAsDouble() * shape.scales()[place];
                }
            }
        }
        length = 0;
    }

    private void endOfRow() throws IOException {
        boolean isBlank = column == 0 && length == 0;
        boolean isRemark = column == 0 && length > 0 && cell[0] == '#';
        endOfCell();
        if (line > shape.headerLine() && !isBlank && !isRemark) {
            rows++;
            if (read == amps.length + 1) {
                sink.add(seconds / shape.perSecond(), amps);
            } else if (++bad <= MOST_PROBLEMS) {
                problems.append(" line ").append(line).append(';');
            } else if (bad > MOST_BAD_ROWS) {
                throw new IOException("more than " + MOST_BAD_ROWS + " rows cannot be read, the first:" + problems);
            }
        }
        column = 0;
        read = 0;
        line++;
    }

    private OptionalDouble value(boolean isTime) {
        if (length > LONGEST_CELL || length == 0) {
            return OptionalDouble.empty();
        }
        double plain = plain();
        if (!Double.isNaN(plain)) {
            return OptionalDouble.of(plain);
        }
        double moment = isTime ? moments.seconds(cell, length, shape.isCommaDecimal()) : Double.NaN;
        if (!Double.isNaN(moment)) {
            return OptionalDouble.of(moment);
        }
        String text = new String(cell, 0, length, StandardCharsets.ISO_8859_1).strip();
        return isTime
                ? RecordingCsv.seconds(text, shape.isCommaDecimal())
                : RecordingCsv.amount(text, shape.isCommaDecimal());
    }

    /** A number of digits, a sign, a decimal mark and blanks alone; not a number where it is anything else. */
    private double plain() {
        byte mark = (byte) (shape.isCommaDecimal() ? ',' : '.');
        long digits = 0;
        int count = 0;
        int decimals = -1;
        boolean isNegative = false;
        for (int i = 0; i < length; i++) {
            byte c = cell[i];
            if (c >= '0' && c <= '9') {
                digits = 10 * digits + (c - '0');
                decimals += decimals >= 0 ? 1 : 0;
                if (++count > 17) {
                    return Double.NaN;
                }
            } else if (c == mark && decimals < 0) {
                decimals = 0;
            } else if (c == '-' && count == 0 && !isNegative) {
                isNegative = true;
            } else if (c != ' ' && c != '\t') {
                return Double.NaN;
            }
        }
        if (count == 0) {
            return Double.NaN;
        }
        double value = digits / POWERS[Math.max(0, decimals)];
        return isNegative ? -value : value;
    }
}
