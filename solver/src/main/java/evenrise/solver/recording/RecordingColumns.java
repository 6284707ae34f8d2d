package evenrise.solver.recording;

import evenrise.model.intake.RecorderColumns;
import evenrise.model.project.Phase;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Which columns of a recorded table are its time and its currents: as somebody has said of such headers, else by their words.
 *
 * @param row of the headers, from 0; data begins below
 * @param time its column, from 0
 * @param unitsPerSecond of times that are plain numbers
 * @param amps column of each phase
 * @param scales amperes of one unit, of each phase
 * @param isSaid whether somebody has said it
 */
record RecordingColumns(
        int row, int time, double unitsPerSecond, Map<Phase, Integer> amps, Map<Phase, Double> scales, boolean isSaid) {
    private static final int MOST_HEADER_ROWS = 60;

    /** The first row with what was said, else the first with a time and a current. */
    static Optional<RecordingColumns> in(ReadTable table, List<RecorderColumns> said) {
        int rows = Math.min(MOST_HEADER_ROWS, table.rows().size());
        for (RecorderColumns each : said) {
            for (int row = 0; row < rows; row++) {
                Optional<RecordingColumns> found = said(table.rows().get(row), row, each);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        for (int row = 0; row < rows; row++) {
            Optional<RecordingColumns> found = byWords(table.rows().get(row), row);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    /** Where all of these headers stand. */
    private static Optional<RecordingColumns> said(ReadTable.Row headers, int row, RecorderColumns said) {
        int time = column(headers, said.time());
        Map<Phase, Integer> amps = new EnumMap<>(Phase.class);
        Map<Phase, Double> scales = new EnumMap<>(Phase.class);
        said.phases().forEach((phase, header) -> {
            amps.put(phase, column(headers, header));
            scales.put(phase, said.ampsPerUnit().orElse(ampsPerUnit(plain(header))));
        });
        return time < 0 || amps.isEmpty() || amps.containsValue(-1)
                ? Optional.empty()
                : Optional.of(new RecordingColumns(
                        row,
                        time,
                        said.unitsPerSecond().orElse(unitsPerSecond(plain(said.time()))),
                        amps,
                        scales,
                        true));
    }

    private static int column(ReadTable.Row headers, String header) {
        for (int column = 0; column < headers.cells().size(); column++) {
            if (plain(headers.cell(column).text()).equals(plain(header))) {
                return column;
            }
        }
        return -1;
    }

    private static Optional<RecordingColumns> byWords(ReadTable.Row headers, int row) {
        int time = -1;
        Map<Phase, Integer> amps = new EnumMap<>(Phase.class);
        Map<Phase, Double> scales = new EnumMap<>(Phase.class);
        for (int column = 0; column < headers.cells().size(); column++) {
            String header = plain(headers.cell(column).text());
            if (time < 0 && header.matches("(time|timestamp|date.?time|zeit|t|seconds?)\\b.*|time_(s|ms)")) {
                time = column;
            } else {
                int at = column;
                phase(header).ifPresent(phase -> {
                    amps.putIfAbsent(phase, at);
                    scales.putIfAbsent(phase, ampsPerUnit(header));
                });
            }
        }
        return time < 0 || amps.isEmpty()
                ? Optional.empty()
                : Optional.of(new RecordingColumns(
                        row, time, unitsPerSecond(plain(headers.cell(time).text())), amps, scales, false));
    }

    private static String plain(String header) {
        return header.toLowerCase(Locale.ROOT).strip();
    }

    private static double unitsPerSecond(String header) {
        return header.matches(".*(\\(ms\\)|\\[ms\\]|\\bms\\b|_ms).*") ? 1000 : 1;
    }

    private static double ampsPerUnit(String header) {
        return header.matches(".*(\\(ma\\)|\\[ma\\]|\\bma\\b|_ma).*") ? 0.001 : 1.0;
    }

    /** By the names of phases in use; columns of voltages, powers and extremes are others. */
    static Optional<Phase> phase(String header) {
        if (header.matches(".*\\b(u|v|volts?|voltage|w|kw|power|va|kva|max|min|thd|pf|hz)\\b.*")) {
            return Optional.empty();
        }
        String bare = header.replaceAll(
                        "\\((m?a|amps?|ampere)\\)|\\[(m?a|amps?)\\]|\\b(rms|current|amps?|phase|line|irms|avg)\\b|_m?a\\b|,",
                        " ")
                .strip();
        return switch (bare) {
            case "a", "l1", "i1", "r", "ia", "i l1", "il1", "1" -> Optional.of(Phase.A);
            case "b", "l2", "i2", "s", "ib", "i l2", "il2", "2" -> Optional.of(Phase.B);
            case "c", "l3", "i3", "ic", "i l3", "il3", "3" -> Optional.of(Phase.C);
            default -> Optional.empty();
        };
    }

    /** What a column is read as: time, or a phase; empty where it is not read. */
    String meaning(int column) {
        if (column == time) {
            return RecordedColumn.TIME;
        }
        return amps.entrySet().stream()
                .filter(each -> each.getValue() == column)
                .map(each -> each.getKey().name())
                .findFirst()
                .orElse("");
    }

    /** How each column is read, for people. */
    List<String> words(ReadTable table) {
        ReadTable.Row headers = table.rows().get(row);
        List<String> words = new ArrayList<>();
        words.add("'" + headers.cell(time).text() + "': time" + (unitsPerSecond > 1 ? " in ms" : ""));
        amps.forEach((phase, column) -> words.add("'" + headers.cell(column).text() + "': current of phase " + phase));
        if (isSaid) {
            words.add("as was said of recordings with these headers");
        }
        return words;
    }
}
