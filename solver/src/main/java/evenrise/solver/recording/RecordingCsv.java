package evenrise.solver.recording;

import evenrise.model.intake.RecorderColumns;
import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import evenrise.solver.table.Amount;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rms currents over time out of a table of values: a column of times, and one for each phase, found by their headers. */
public final class RecordingCsv {
    /** More would not fit into memory beside what is found in them; a start takes a few minutes. */
    public static final int MOST_SAMPLES = 2_000_000;

    private static final int MOST_CELLS = 4 * MOST_SAMPLES;
    private static final int MOST_PROBLEMS = 20;

    private final List<String> problems = new ArrayList<>();
    private final TextTable table;
    private final boolean isCommaDecimal;

    /**
     * @param recording empty where there is a problem
     * @param columns how each column that was used was read: header and meaning
     * @param isWave whether instantaneous currents were recorded, which became rms values
     */
    public record Read(Optional<Recording> recording, List<String> columns, List<String> problems, boolean isWave) {
        /** Of rms values. */
        Read(Optional<Recording> recording, List<String> columns, List<String> problems) {
            this(recording, columns, problems, false);
        }
    }

    /**
     * How a table is to be read, by its first rows.
     *
     * @param headerLine the header's, from 1; data begins below
     * @param columns of currents, and none where none was found
     * @param phases of these columns, in their order
     * @param intervalSeconds between the first samples
     * @param words how each column is read, for people
     */
    record Shape(
            int headerLine,
            char delimiter,
            boolean isCommaDecimal,
            int time,
            double perSecond,
            int[] columns,
            double[] scales,
            Phase[] phases,
            double intervalSeconds,
            String[] words) {}

    /**
     * @param said which columns are what, as somebody has said of recordings with such headers
     * @throws IOException where the text is no table, with a message for the user
     */
    static Shape shape(String head, List<RecorderColumns> said) throws IOException {
        return new RecordingCsv(TextTable.of(head, MOST_CELLS)).shape(said);
    }

    private Shape shape(List<RecorderColumns> said) {
        Optional<RecordingColumns> columns = RecordingColumns.in(table.table(), said);
        if (columns.isEmpty()) {
            return new Shape(
                    0,
                    table.delimiter(),
                    isCommaDecimal,
                    0,
                    1,
                    new int[0],
                    new double[0],
                    new Phase[0],
                    1,
                    new String[0]);
        }
        RecordingColumns found = columns.get();
        Phase[] phases = found.amps().keySet().toArray(Phase[]::new);
        List<Double> moments = new ArrayList<>();
        for (int i = found.row() + 1;
                i < Math.min(found.row() + 50, table.table().rows().size());
                i++) {
            seconds(table.table().rows().get(i).cell(found.time()).text(), isCommaDecimal)
                    .ifPresent(each -> moments.add(each / found.unitsPerSecond()));
        }
        double interval =
                moments.size() < 2 ? 1 : (moments.get(moments.size() - 1) - moments.get(0)) / (moments.size() - 1);
        return new Shape(
                table.table().rows().get(found.row()).number(),
                table.delimiter(),
                isCommaDecimal,
                found.time(),
                found.unitsPerSecond(),
                found.amps().values().stream().mapToInt(each -> each).toArray(),
                found.scales().values().stream().mapToDouble(each -> each).toArray(),
                phases,
                interval,
                found.words(table.table()).toArray(String[]::new));
    }

    private RecordingCsv(TextTable table) {
        this.table = table;
        this.isCommaDecimal = table.delimiter() != ',' && table.table().hasDecimalComma();
    }

    /**
     * @param said which columns are what, as somebody has said of recordings with such headers
     * @throws IOException where the text is no table, with a message for the user
     */
    public static Read read(String text, List<RecorderColumns> said) throws IOException {
        return new RecordingCsv(TextTable.of(text, MOST_CELLS)).read(said);
    }

    private Read read(List<RecorderColumns> said) {
        Optional<RecordingColumns> columns = RecordingColumns.in(table.table(), said);
        if (columns.isEmpty()) {
            return new Read(Optional.empty(), List.of(), List.of(RecordingHeaders.question(table.table())));
        }
        RecordingColumns found = columns.get();
        List<double[]> rows = new ArrayList<>();
        Phase[] phases = found.amps().keySet().toArray(Phase[]::new);
        for (int i = found.row() + 1; i < table.table().rows().size() && problems.size() < MOST_PROBLEMS; i++) {
            row(i, found, phases).ifPresent(rows::add);
        }
        return new Read(
                problems.isEmpty() ? recording(rows, phases) : Optional.empty(), found.words(table.table()), problems);
    }

    private Optional<double[]> row(int index, RecordingColumns columns, Phase[] phases) {
        var row = table.table().rows().get(index);
        double[] values = new double[phases.length + 1];
        String time = row.cell(columns.time()).text();
        OptionalDouble seconds = seconds(time, isCommaDecimal);
        if (seconds.isEmpty()) {
            problems.add("line " + row.number() + ": '" + time + "' is no time.");
            return Optional.empty();
        }
        values[0] = seconds.getAsDouble() / columns.unitsPerSecond();
        for (int i = 0; i < phases.length; i++) {
            String cell = row.cell(columns.amps().get(phases[i])).text();
            Optional<Amount> amount = Amount.of(cell, isCommaDecimal);
            double usual = columns.scales().get(phases[i]);
            Optional<Double> scale =
                    amount.flatMap(each -> each.unit().isEmpty() ? Optional.of(usual) : Amount.scale(each.unit(), "a"));
            if (scale.isEmpty()) {
                problems.add("line " + row.number() + ": '" + cell + "' is no current.");
                return Optional.empty();
            }
            values[i + 1] = amount.get().value() * scale.get();
        }
        return Optional.of(values);
    }

    private Optional<Recording> recording(List<double[]> rows, Phase[] phases) {
        double[] seconds = rows.stream().mapToDouble(row -> row[0]).toArray();
        Map<Phase, double[]> amps = new EnumMap<>(Phase.class);
        for (int i = 0; i < phases.length; i++) {
            int column = i + 1;
            amps.put(phases[i], rows.stream().mapToDouble(row -> row[column]).toArray());
        }
        try {
            return Optional.of(new Recording(seconds, amps));
        } catch (IllegalArgumentException e) {
            problems.add(e.getMessage() + ".");
            return Optional.empty();
        }
    }

    /** Seconds, a time of day, or a date and time (ISO 8601). */
    static OptionalDouble seconds(String text, boolean isCommaDecimal) {
        Optional<Amount> amount = Amount.of(text, isCommaDecimal);
        if (amount.isPresent() && amount.get().unit().matches("s?")) {
            return OptionalDouble.of(amount.get().value());
        }
        String iso = text.strip().replace(' ', 'T').replace(',', '.');
        try {
            if (iso.matches("[0-9]{1,2}:.*")) {
                return OptionalDouble.of(LocalTime.parse(iso.length() > 1 && iso.charAt(1) == ':' ? "0" + iso : iso)
                                .toNanoOfDay()
                        / 1e9);
            }
            LocalDateTime moment = iso.matches(".*(Z|[+-][0-9]{2}:?[0-9]{2})")
                    ? OffsetDateTime.parse(iso).toLocalDateTime()
                    : LocalDateTime.parse(iso);
            return OptionalDouble.of(moment.toEpochSecond(ZoneOffset.UTC) + moment.getNano() / 1e9);
        } catch (DateTimeParseException e) {
            return OptionalDouble.empty();
        }
    }

    /** A moment as a recording writes it. */
    public static OptionalDouble moment(String text) {
        return seconds(text, false);
    }

    /** A current in its column's unit; one of its own is no plain amount. */
    static OptionalDouble amount(String text, boolean isCommaDecimal) {
        Optional<Amount> amount =
                Amount.of(text, isCommaDecimal).filter(each -> each.unit().isEmpty());
        return amount.isPresent() ? OptionalDouble.of(amount.get().value()) : OptionalDouble.empty();
    }
}
