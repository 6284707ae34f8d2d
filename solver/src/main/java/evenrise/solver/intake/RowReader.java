package evenrise.solver.intake;

import evenrise.model.intake.Mapping;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Goes down the rows below a header and tells which hold pieces: neither headings, nor sums, nor examples. */
final class RowReader {
    private static final String SUM = "(sub[- ]?|grand )?(total|totals|sum|summe|zwischensumme|gesamt|somme|suma)\\b.*";

    private final ReadTable sheet;
    private final Header header;
    private final Notices notices;
    private final CellReader cells;
    private final Whereabouts whereabouts;
    private final PieceReader pieces;
    private int listed;

    RowReader(ReadTable sheet, Header header, Mapping mapping, Notices notices) {
        this.sheet = sheet;
        this.header = header;
        this.notices = notices;
        header.notices().forEach(notices::add);
        this.cells = new CellReader(sheet, header, mapping.readings(), notices);
        this.whereabouts = new Whereabouts(cells, notices);
        this.pieces = new PieceReader(sheet, header, mapping, notices, cells, whereabouts);
    }

    /** Pieces in the rows that were read, whatever became of them. */
    int listed() {
        return listed;
    }

    /** Rooms in plain words. */
    Set<String> rooms() {
        return whereabouts.rooms();
    }

    List<Item> read() {
        List<Item> items = new ArrayList<>();
        sheet.rows().stream().filter(row -> row.number() > header.lastRow()).forEach(row -> row(row, items));
        notices.sumUp(sheet);
        return items;
    }

    private void row(ReadTable.Row row, List<Item> items) {
        String name = cells.text(row, Meaning.NAME);
        boolean hasFigures = List.of(Meaning.WATTS, Meaning.VOLT_AMPS, Meaning.AMPS).stream()
                .anyMatch(meaning -> !cells.cell(row, meaning).isEmpty());
        if (name.isEmpty() && firstText(row).toLowerCase(Locale.ROOT).matches(SUM)) {
            cells.leaveOut(row, "'" + CellReader.cut(firstText(row)) + "' is taken for a sum and left out");
        } else if (name.isEmpty()
                && !hasFigures
                && !cells.cell(row, Meaning.QUANTITY).isEmpty()) {
            cells.problem(
                    row, Meaning.QUANTITY, "a quantity without a name. Maybe the name is in a merged cell above.");
            listed++;
            notices.leaveOut(1);
        } else if (name.isEmpty() && !hasFigures) {
            // A heading between rows may name the room of what follows; what else it says is told.
            whereabouts.at(row);
            String said = said(row);
            if (!said.isEmpty()) {
                cells.leaveOut(row, "'" + CellReader.cut(said) + "' has neither a name nor figures and is left out");
            }
        } else if (name.toLowerCase(Locale.ROOT).matches(SUM)) {
            cells.leaveOut(row, "'" + CellReader.cut(name) + "' is taken for a sum and left out");
        } else if (isHeading(row, name)) {
            cells.leaveOut(row, "'" + CellReader.cut(name) + "' is taken for a heading");
            whereabouts.below(name);
        } else if (name.endsWith(Template.EXAMPLE)) {
            cells.leaveOut(row, "an example of the template is left out");
        } else {
            whereabouts.at(row);
            PieceReader.Read read = pieces.of(row, name);
            listed += read.pieces();
            items.addAll(read.items());
        }
    }

    private static String firstText(ReadTable.Row row) {
        return row.cells().stream()
                .map(Cell::text)
                .filter(text -> !text.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** What a row without a piece says beside its room and rack. */
    private String said(ReadTable.Row row) {
        List<String> where = List.of(cells.text(row, Meaning.ROOM), cells.text(row, Meaning.RACK));
        return row.cells().stream()
                .map(Cell::text)
                .filter(text -> !text.isEmpty() && !where.contains(text))
                .collect(Collectors.joining("; "));
    }

    /** Nothing but a name, where a list counts its pieces or the name is written as a heading. */
    private boolean isHeading(ReadTable.Row row, String name) {
        long filled = header.columns().values().stream()
                .filter(column -> !row.cell(column).isEmpty())
                .count();
        boolean isAlone = filled == 1 && cells.text(row, Meaning.QUANTITY).isEmpty();
        boolean isLoud = name.equals(name.toUpperCase(Locale.ROOT)) && !name.equals(name.toLowerCase(Locale.ROOT));
        return isAlone
                && Meaning.DRAWS.stream()
                        .allMatch(meaning -> cells.text(row, meaning).isEmpty())
                && (cells.hasColumn(Meaning.QUANTITY) || isLoud || name.endsWith(":"));
    }
}
