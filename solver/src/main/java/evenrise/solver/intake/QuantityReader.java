package evenrise.solver.intake;

import evenrise.model.contract.Phrase;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Reads how many pieces a row stands for, and how many there may be where it does not say so exactly. */
final class QuantityReader {
    private static final int MOST_PIECES = 10_000;

    private final CellReader cells;
    private final double aboutPercent;
    private final Notices notices;

    /** @param aboutPercent how far a number may be from one that is said to be about so many */
    QuantityReader(CellReader cells, double aboutPercent, Notices notices) {
        this.cells = cells;
        this.aboutPercent = aboutPercent;
        this.notices = notices;
    }

    /** @param open empty where the number is exact */
    record Count(int pieces, Optional<OpenCount> open) {
        private static Count of(OpenCount open) {
            return new Count(open.listed(), Optional.of(open));
        }

        private static Count exactly(int pieces) {
            return new Count(pieces, Optional.empty());
        }
    }

    /** 1 where that is a problem, which is noted. */
    Count of(ReadTable.Row row) {
        boolean hasEnds = hasNumber(row, Meaning.QUANTITY_LOW) || hasNumber(row, Meaning.QUANTITY_HIGH);
        return hasEnds ? byEnds(row) : byCell(row);
    }

    private boolean hasNumber(ReadTable.Row row, Meaning meaning) {
        return cells.hasColumn(meaning) && !CellReader.isSilent(cells.cell(row, meaning));
    }

    /** A likely number with the fewest and the most beside it; without one, that in the middle. */
    private Count byEnds(ReadTable.Row row) {
        OptionalInt low = whole(row, Meaning.QUANTITY_LOW);
        OptionalInt high = whole(row, Meaning.QUANTITY_HIGH);
        OptionalInt likely = hasNumber(row, Meaning.QUANTITY) ? whole(row, Meaning.QUANTITY) : OptionalInt.empty();
        int least = low.orElse(likely.orElse(0));
        int most = high.orElse(likely.orElse(least));
        int tip = likely.orElse((least + most + 1) / 2);
        if (least > tip || tip > most) {
            cells.problem(
                    row,
                    Meaning.QUANTITY_LOW,
                    "quantities are " + least + ", " + tip + ", " + most
                            + ", expected low, likely, high in this order.");
            return Count.exactly(1);
        }
        if (likely.isEmpty() && (low.isEmpty() || high.isEmpty())) {
            notices.assume("a row that states the fewest or the most pieces alone counts for that many");
            return Count.exactly(most);
        }
        if (most == 0) {
            return Count.exactly(0);
        }
        // Nothing lacks a place: without a likely number the most is taken, and so is one where none is likely.
        int listed = likely.isPresent() && tip > 0 ? tip : most;
        return least == most ? Count.exactly(most) : told(row, new OpenCount(least, tip, most, listed, true));
    }

    private OptionalInt whole(ReadTable.Row row, Meaning meaning) {
        OptionalDouble value = cells.amount(row, meaning, "");
        return value.isEmpty() ? OptionalInt.empty() : OptionalInt.of(whole(row, meaning, value.getAsDouble()));
    }

    private Count byCell(ReadTable.Row row) {
        Cell cell = cells.cell(row, Meaning.QUANTITY);
        Optional<OpenCount> open = cell.kind() == Cell.Kind.TEXT ? OpenCount.of(cell.text()) : Optional.empty();
        if (open.filter(it -> it.high() <= MOST_PIECES).isPresent()) {
            return told(row, open.get());
        }
        OptionalDouble quantity = cells.amount(row, Meaning.QUANTITY, "");
        if (quantity.isEmpty()) {
            return unsaid(row);
        }
        int pieces = whole(row, Meaning.QUANTITY, quantity.getAsDouble());
        return pieces > 0 && cells.isAbout(row, Meaning.QUANTITY)
                ? told(row, OpenCount.about(pieces, aboutPercent))
                : Count.exactly(pieces);
    }

    private Count told(ReadTable.Row row, OpenCount open) {
        cells.read(row, Meaning.QUANTITY, open.words(), ReadValue.How.GUESSED);
        cells.guess(
                row,
                "'" + CellReader.cut(cells.text(row, Meaning.NAME)) + "': "
                        + Phrase.counted(open.listed(), "piece") + " in the project, likely " + open.likely() + ", "
                        + open.low() + " to " + open.high() + " where prices are drawn");
        return Count.of(open);
    }

    private Count unsaid(ReadTable.Row row) {
        OptionalInt told =
                cells.hasColumn(Meaning.QUANTITY) ? OptionalInt.empty() : CountInName.of(cells.text(row, Meaning.NAME));
        if (told.isPresent()) {
            cells.readByName(row, Meaning.QUANTITY, "as its name says: " + told.getAsInt(), ReadValue.How.GUESSED);
            notices.assume("a number in a name, such as '4 lamps' or 'lamps (4)', counts the pieces");
            return Count.exactly(told.getAsInt());
        }
        if (cells.isLeftOpen(row, Meaning.QUANTITY)) {
            cells.read(row, Meaning.QUANTITY, "one piece", ReadValue.How.ASKED);
            cells.ask(
                    row,
                    "how many are there? The list leaves it open; it counts for one piece, and no range of prices covers"
                            + " it.");
            return Count.of(OpenCount.ONE_OF_UNKNOWN);
        }
        if (CellReader.isSilent(cells.cell(row, Meaning.QUANTITY))) {
            notices.assume("a row without a quantity counts for one piece");
        }
        return Count.exactly(1);
    }

    /** 1 where that is a problem, which is noted. */
    private int whole(ReadTable.Row row, Meaning meaning, double value) {
        if (value != Math.rint(value) || value < 0 || value > MOST_PIECES) {
            cells.problem(
                    row,
                    meaning,
                    "'" + CellReader.cut(cells.text(row, meaning)) + "', expected a whole number from 1 to "
                            + MOST_PIECES + ".");
            return 1;
        }
        return (int) value;
    }
}
