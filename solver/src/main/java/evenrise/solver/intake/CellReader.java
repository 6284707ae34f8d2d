package evenrise.solver.intake;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Harmless;
import evenrise.model.intake.CellReading;
import evenrise.solver.table.Amount;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the cells of one sheet as numbers with a unit; what cannot be read is a problem with its place. */
final class CellReader {
    private static final int LONGEST_NAME = 120;

    private final ReadTable sheet;
    private final Header header;
    private final Notices notices;
    private final CorrectedCells cells;
    private final boolean isCommaDecimal;

    CellReader(ReadTable sheet, Header header, List<CellReading> readings, Notices notices) {
        this.cells = new CorrectedCells(sheet, header, readings);
        this.sheet = sheet;
        this.header = header;
        this.notices = notices;
        this.isCommaDecimal = sheet.hasDecimalComma();
        if (isCommaDecimal) {
            notices.guess("the decimal mark is a comma, as some cells can only be read so");
        }
    }

    /** Empty where the cell is empty, or is a problem that is noted. */
    OptionalDouble amount(ReadTable.Row row, Meaning meaning, String unit) {
        Cell cell = cell(row, meaning);
        if (isSilent(cell) || !isReadable(row, meaning)) {
            return OptionalDouble.empty();
        }
        Figure figure = figure(cell);
        Optional<Amount> amount = Amount.of(figure.text(), isCommaDecimal && cell.kind() == Cell.Kind.TEXT);
        if (amount.isEmpty()) {
            problem(row, meaning, "'" + cut(cell.text()) + "' is no number with at most one unit.");
            return OptionalDouble.empty();
        }
        String stated = amount.get().unit().isEmpty()
                ? header.units().getOrDefault(meaning, unit)
                : amount.get().unit();
        Optional<Double> scale = Amount.scale(stated, unit);
        if (scale.isEmpty()) {
            problem(
                    row,
                    meaning,
                    "'" + cut(cell.text()) + "' is in '" + stated + "', expected "
                            + (unit.isEmpty() ? "no unit" : unit.toUpperCase(Locale.ROOT)) + "." + cure(stated));
            return OptionalDouble.empty();
        }
        if (figure.isAbout()) {
            notices.assume("about, or a range, or other words are said of " + meaning.word() + ": the figure counts as"
                    + " it stands, of a range its upper end, of several the greatest");
        }
        if (figure.times() > 1) {
            notices.assume(meaning.word() + " such as '2 x 500' are multiplied out for a piece");
        }
        double value = figure.times() * scale.get() * amount.get().value();
        read(
                row,
                meaning,
                Decimals.toThousandths(value) + (unit.isEmpty() ? "" : " " + unit.toUpperCase(Locale.ROOT)),
                figure.isAbout() || figure.times() > 1 ? ReadValue.How.GUESSED : ReadValue.How.STATED);
        return OptionalDouble.of(value);
    }

    /** Whether the list says that a figure is not exact. */
    boolean isAbout(ReadTable.Row row, Meaning meaning) {
        return figure(cell(row, meaning)).isAbout();
    }

    /** Whether the list leaves it open. */
    boolean isLeftOpen(ReadTable.Row row, Meaning meaning) {
        return LeftOpen.is(text(row, meaning));
    }

    /** The unit of a cell, or that of its header; empty where neither states one. */
    String unit(ReadTable.Row row, Meaning meaning) {
        return Amount.of(figure(cell(row, meaning)).text())
                .map(Amount::unit)
                .filter(unit -> !unit.isEmpty())
                .orElse(header.units().getOrDefault(meaning, ""));
    }

    private static Figure figure(Cell cell) {
        if (cell.kind() != Cell.Kind.TEXT) {
            return new Figure(cell.text(), 1, false);
        }
        Figure figure = Figure.of(cell.text());
        return Amount.of(figure.text()).isPresent()
                ? figure
                : FigureInWords.draw(cell.text()).orElse(figure);
    }

    /** Shaft power in horsepower, where a cell or the header of its column states it so. */
    OptionalDouble horsepower(ReadTable.Row row, Meaning meaning) {
        Cell cell = cell(row, meaning);
        String usual = meaning == Meaning.SHAFT_POWER ? "hp" : "";
        String written = cell.text().strip();
        String bare = written.replaceAll("(?i)\\s*hp$", "");
        String decimal = FigureInWords.decimal(bare);
        String text = decimal.equals(bare) ? figure(cell).text() : decimal + written.substring(bare.length());
        return Amount.of(text, isCommaDecimal && cell.kind() == Cell.Kind.TEXT)
                .filter(amount -> (amount.unit().isEmpty()
                                ? header.units().getOrDefault(meaning, usual)
                                : amount.unit())
                        .equals("hp"))
                .filter(amount -> amount.value() > 0)
                .map(amount -> OptionalDouble.of(amount.value()))
                .orElse(OptionalDouble.empty());
    }

    /** Whether what a row says there stands in another column. */
    boolean isFromElsewhere(ReadTable.Row row, Meaning meaning) {
        Integer column = header.columns().get(meaning);
        return (column == null || row.cell(column).isEmpty())
                && !cells.written(row, meaning).isEmpty();
    }

    /** Whether the cell says nothing. */
    static boolean isSilent(Cell cell) {
        return cell.isEmpty() || cell.text().matches("[-–—]+") || LeftOpen.is(cell.text());
    }

    /** Whether the cell holds text or a number; else that is noted. */
    boolean isReadable(ReadTable.Row row, Meaning meaning) {
        Cell cell = cell(row, meaning);
        switch (cell.kind()) {
            case DATE ->
                problem(row, meaning, "'" + cell.text() + "' is a date. Maybe the sheet has turned a number into one.");
            case ERROR -> problem(row, meaning, "the formula ends in '" + cell.text() + "'.");
            case FORMULA ->
                problem(
                        row,
                        meaning,
                        "a formula whose value is not in the file. Maybe open and save it in a spreadsheet program.");
            default -> {
                return true;
            }
        }
        return false;
    }

    void problem(ReadTable.Row row, Meaning meaning, String text) {
        read(row, meaning, "a problem, told there", ReadValue.How.PROBLEM);
        Integer column = header.columns().get(meaning);
        notices.add(
                column == null
                        ? Notice.problem(sheet, row.number(), text)
                        : Notice.problem(sheet, row.number(), column, text));
    }

    /** Of the row as a whole. */
    void problem(ReadTable.Row row, String text) {
        notices.add(Notice.problem(sheet, row.number(), text));
    }

    /** Somebody has to answer. */
    void ask(ReadTable.Row row, String text) {
        notices.add(new Notice(Notice.Kind.QUESTION, Notice.place(sheet, row.number()), text));
    }

    /** For confirmation. */
    void guess(ReadTable.Row row, String text) {
        notices.add(Notice.guess(sheet, row.number(), text));
    }

    /** Notes that a row counts for nothing. */
    void leaveOut(ReadTable.Row row, String why) {
        notices.add(new Notice(Notice.Kind.LEFT_OUT, place(row), why));
    }

    boolean hasColumn(Meaning meaning) {
        return header.columns().containsKey(meaning);
    }

    Cell cell(ReadTable.Row row, Meaning meaning) {
        return cells.read(row, meaning);
    }

    private String place(ReadTable.Row row) {
        return Notice.place(sheet, row.number());
    }

    /** Remembers how a text was read, for whoever asks. */
    void read(ReadTable.Row row, Meaning meaning, String reads, ReadValue.How how) {
        notices.values().add(place(row), meaning, cells.written(row, meaning).text(), "", reads, how);
    }

    /** The same where the name of the piece told it. */
    void readByName(ReadTable.Row row, Meaning meaning, String reads, ReadValue.How how) {
        notices.values()
                .add(
                        place(row),
                        meaning,
                        cells.written(row, meaning).text(),
                        cells.written(row, Meaning.NAME).text(),
                        reads,
                        how);
    }

    String text(ReadTable.Row row, Meaning meaning) {
        return cell(row, meaning).text();
    }

    static String cut(String text) {
        return Harmless.cut(text, LONGEST_NAME);
    }

    private static String cure(String stated) {
        return stated.matches("hp|ps|cv|ch") ? " Maybe state the motor's full-load current in ampere." : "";
    }
}
