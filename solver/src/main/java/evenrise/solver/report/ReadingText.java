package evenrise.solver.report;

import evenrise.solver.intake.EquipmentList;
import evenrise.solver.intake.ReadColumn;
import evenrise.solver.intake.ReadValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How the columns and texts of an equipment list were read, for a screen. */
public final class ReadingText {
    /** So many plain texts of a column stand one by one. */
    private static final int MOST_PLAIN = 6;

    private ReadingText() {}

    public static List<String> lines(EquipmentList list, Paint paint) {
        Section columns = new Section(paint, "Columns, as they were read").table(columns(list));
        Section texts = new Section(paint, "Texts of cells, as they were read").table(texts(list));
        texts.text(
                "--write-mapping FILE writes all of this as a mapping. Change a header under 'columns' or what a text"
                        + " 'reads' under 'readings', and import again with --map FILE.");
        return Sections.joined(List.of(columns.lines(), texts.lines()));
    }

    private static Table columns(EquipmentList list) {
        boolean hasSheets =
                list.columns().stream().map(ReadColumn::sheet).distinct().count() > 1;
        Table table = new Table();
        if (hasSheets) {
            table.text("Sheet");
        }
        table.words("Column").text("Header").words("Read as").words("Unit").words("Told by");
        for (ReadColumn column : list.columns()) {
            List<String> cells = new ArrayList<>();
            if (hasSheets) {
                cells.add(column.sheet());
            }
            cells.add(column.letters());
            cells.add(column.header());
            cells.add(column.means().orElse("not read"));
            cells.add(column.unit());
            cells.add(by(column.by()));
            table.row(column.means().isEmpty() ? Tone.FAINT : Tone.PLAIN, cells.toArray(String[]::new));
        }
        return table;
    }

    private static String by(ReadColumn.By by) {
        return switch (by) {
            case MAPPING -> "the mapping";
            case HEADER -> "its header";
            case VALUES -> "its values";
            case NOTHING -> "";
            case IGNORED -> "asked to ignore";
        };
    }

    private static Table texts(EquipmentList list) {
        Table table = new Table()
                .words("Column")
                .text("Text")
                .text("Of")
                .text("Read as")
                .words("How")
                .number("Rows");
        Map<String, List<ReadValue>> byColumn = new LinkedHashMap<>();
        list.values()
                .forEach(value -> byColumn.computeIfAbsent(value.of(), any -> new ArrayList<>())
                        .add(value));
        byColumn.forEach((column, values) -> {
            List<ReadValue> plain = values.stream()
                    .filter(value -> value.how() == ReadValue.How.STATED)
                    .toList();
            boolean isLong = plain.size() > MOST_PLAIN;
            values.stream()
                    .filter(value -> value.how() != ReadValue.How.STATED || !isLong)
                    .forEach(value -> table.row(
                            tone(value.how()),
                            column,
                            value.written().isEmpty() ? "(empty)" : value.written(),
                            value.name(),
                            value.reads(),
                            how(value.how()),
                            String.valueOf(value.rows())));
            if (isLong) {
                int rows = plain.stream().mapToInt(ReadValue::rows).sum();
                table.row(column, plain.size() + " others", "", "as they stand", "stated", String.valueOf(rows));
            }
        });
        return table;
    }

    private static String how(ReadValue.How how) {
        return switch (how) {
            case STATED -> "stated";
            case GUESSED -> "guessed";
            case ASKED -> "asked";
            case PROBLEM -> "problem";
        };
    }

    private static Tone tone(ReadValue.How how) {
        return how == ReadValue.How.PROBLEM ? Tone.BAD : Tone.PLAIN;
    }
}
