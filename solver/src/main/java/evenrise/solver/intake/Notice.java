package evenrise.solver.intake;

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

    static Notice problem(Sheet sheet, int row, int column, String text) {
        return new Notice(Kind.PROBLEM, place(sheet, row) + ", column " + Sheet.letters(column), text);
    }

    static Notice problem(Sheet sheet, int row, String text) {
        return new Notice(Kind.PROBLEM, place(sheet, row), text);
    }

    static Notice problem(String text) {
        return new Notice(Kind.PROBLEM, "", text);
    }

    static Notice guess(String text) {
        return new Notice(Kind.GUESS, "", text);
    }

    static Notice guess(Sheet sheet, int row, String text) {
        return new Notice(Kind.GUESS, place(sheet, row), text);
    }

    static String place(Sheet sheet, int row) {
        return (sheet.name().isEmpty() ? "" : "sheet '" + sheet.name() + "', ") + "row " + row;
    }

    @Override
    public String toString() {
        return place.isEmpty() ? text : place + ": " + text;
    }
}
