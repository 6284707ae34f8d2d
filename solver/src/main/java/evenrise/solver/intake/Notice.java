package evenrise.solver.intake;

import evenrise.solver.table.ReadTable;

/**
 * Something to tell the user about one place of the list.
 *
 * @param place sheet, row and column, as a person finds them; empty for the list as a whole
 */
record Notice(Kind kind, String place, String text) {
    enum Kind {
        /** The row could not be taken over. */
        PROBLEM,
        /** Taken for granted, for confirmation. */
        GUESS,
        /** Somebody has to decide. */
        QUESTION,
        /** Equipment that others feed. */
        OUTSIDE,
        /** A column that was left alone. */
        NOT_READ
    }

    static Notice problem(ReadTable sheet, int row, int column, String text) {
        return new Notice(Kind.PROBLEM, place(sheet, row) + ", column " + ReadTable.letters(column), text);
    }

    static Notice problem(ReadTable sheet, int row, String text) {
        return new Notice(Kind.PROBLEM, place(sheet, row), text);
    }

    static Notice problem(String text) {
        return new Notice(Kind.PROBLEM, "", text);
    }

    static Notice guess(String text) {
        return new Notice(Kind.GUESS, "", text);
    }

    static Notice guess(ReadTable sheet, int row, String text) {
        return new Notice(Kind.GUESS, place(sheet, row), text);
    }

    static String place(ReadTable sheet, int row) {
        return (sheet.name().isEmpty() ? "" : "sheet '" + sheet.name() + "', ") + "row " + row;
    }

    @Override
    public String toString() {
        return place.isEmpty() ? text : place + ": " + text;
    }
}
