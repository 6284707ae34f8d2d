package evenrise.solver.report;

import evenrise.model.contract.Harmless;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A table for a screen of fixed pitch: words to the left, numbers to the right, never wider than
 * what it is painted on: words go on below where they do not fit, free text first, ids last; a word that is too long is
 * cut. Cleans what it is given.
 */
public final class Table {
    /** Widest line of a report where nobody knows how wide the screen is. */
    public static final int WIDEST = 100;

    private static final String INDENT = "  ";
    private static final String GAP = "  ";
    private static final int NARROWEST_WORDS = 6;

    private enum Kind {
        ID,
        TEXT,
        NUMBER
    }

    private record Column(String header, Kind kind) {
        boolean isNumber() {
            return kind == Kind.NUMBER;
        }
    }

    private record Row(Tone tone, List<String> cells) {}

    private final List<Column> columns = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();

    /** A column of ids and short words, which are told apart by every letter: the last to be narrowed. */
    public Table words(String header) {
        columns.add(new Column(header, Kind.ID));
        return this;
    }

    /** A column of names and other free text: the first to be narrowed. */
    public Table text(String header) {
        columns.add(new Column(header, Kind.TEXT));
        return this;
    }

    /** A column of numbers; the header carries the unit. */
    public Table number(String header) {
        columns.add(new Column(header, Kind.NUMBER));
        return this;
    }

    public Table row(String... cells) {
        return row(Tone.PLAIN, cells);
    }

    public Table row(Tone tone, String... cells) {
        if (cells.length != columns.size()) {
            throw new IllegalArgumentException(cells.length + " cells for " + columns.size() + " columns");
        }
        rows.add(new Row(tone, Arrays.stream(cells).map(Harmless::shown).toList()));
        return this;
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** Header and rows. */
    public Stream<String> lines(Paint paint) {
        int[] widths = widths(paint.columns());
        Row header = new Row(Tone.HEADING, columns.stream().map(Column::header).toList());
        return Stream.concat(Stream.of(header), rows.stream())
                .flatMap(row -> lines(row, widths).map(line -> INDENT + paint.on(row.tone(), line)));
    }

    private Stream<String> lines(Row row, int[] widths) {
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < widths.length; i++) {
            String text = row.cells().get(i);
            cells.add(columns.get(i).isNumber() ? List.of(text) : Wrap.within(widths[i], text));
        }
        int height = cells.stream().mapToInt(List::size).max().orElse(1);
        return IntStream.range(0, height).mapToObj(at -> line(cells, at, widths));
    }

    private String line(List<List<String>> cells, int at, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            List<String> cell = cells.get(i);
            String text = at < cell.size() ? DisplayWidth.cut(cell.get(at), widths[i]) : "";
            String padding = " ".repeat(widths[i] - DisplayWidth.of(text));
            line.append(i == 0 ? "" : GAP).append(columns.get(i).isNumber() ? padding + text : text + padding);
        }
        return line.toString().stripTrailing();
    }

    private int[] widths(int most) {
        int[] widths = new int[columns.size()];
        for (int i = 0; i < widths.length; i++) {
            int column = i;
            widths[i] = Math.max(
                    DisplayWidth.of(columns.get(i).header()),
                    rows.stream()
                            .mapToInt(row -> DisplayWidth.of(row.cells().get(column)))
                            .max()
                            .orElse(0));
        }
        int room = most - INDENT.length() - GAP.length() * (widths.length - 1);
        for (int excess = Arrays.stream(widths).sum() - room; excess > 0; excess--) {
            Optional<Integer> widest = widest(Kind.TEXT, widths).or(() -> widest(Kind.ID, widths));
            if (widest.isEmpty()) {
                break;
            }
            widths[widest.get()]--;
        }
        return widths;
    }

    private Optional<Integer> widest(Kind kind, int[] widths) {
        return Stream.iterate(0, i -> i < widths.length, i -> i + 1)
                .filter(i -> columns.get(i).kind() == kind && widths[i] > NARROWEST_WORDS)
                .max(Comparator.comparingInt(i -> widths[i]));
    }
}
