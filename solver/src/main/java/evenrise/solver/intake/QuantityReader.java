package evenrise.solver.intake;

import evenrise.solver.table.ReadTable;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reads how many pieces a row stands for. */
final class QuantityReader {
    private static final int MOST_PIECES = 10_000;

    private final CellReader cells;
    private final Notices notices;

    QuantityReader(CellReader cells, Notices notices) {
        this.cells = cells;
        this.notices = notices;
    }

    /** 1 where that is a problem, which is noted. */
    int of(ReadTable.Row row) {
        OptionalDouble quantity = cells.amount(row, Meaning.QUANTITY, "");
        if (quantity.isEmpty()) {
            OptionalInt told = cells.hasColumn(Meaning.QUANTITY)
                    ? OptionalInt.empty()
                    : CountInName.of(cells.text(row, Meaning.NAME));
            if (told.isPresent()) {
                cells.readByName(row, Meaning.QUANTITY, "as its name says: " + told.getAsInt(), ReadValue.How.GUESSED);
                notices.assume("a number in a name, such as '4 lamps' or 'lamps (4)', counts the pieces");
                return told.getAsInt();
            }
            if (CellReader.isSilent(cells.cell(row, Meaning.QUANTITY))) {
                notices.assume("a row without a quantity counts for one piece");
            }
            if (cells.isLeftOpen(row, Meaning.QUANTITY)) {
                cells.read(row, Meaning.QUANTITY, "one piece", ReadValue.How.ASKED);
                cells.ask(row, "how many are there? The list leaves it open; it counts for one piece.");
            }
            return 1;
        }
        double value = quantity.getAsDouble();
        if (value != Math.rint(value) || value < 0 || value > MOST_PIECES) {
            cells.problem(
                    row,
                    Meaning.QUANTITY,
                    "'" + CellReader.cut(cells.text(row, Meaning.QUANTITY)) + "', expected a whole number from 1 to "
                            + MOST_PIECES + ".");
            return 1;
        }
        return (int) value;
    }
}
