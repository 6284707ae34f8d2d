package evenrise.solver.intake;

/**
 * Something to tell the user about one place of the list.
 *
 * @param isProblem whether the row could not be taken over; else it is for confirmation
 * @param place sheet, row and column, as a person finds them; empty for the list as a whole
 */
record Notice(boolean isProblem, String place, String text) {
    static Notice problem(Sheet sheet, int row, int column, String text) {
        return new Notice(true, place(sheet, row) + ", column " + Sheet.letters(column), text);
    }

    static Notice problem(Sheet sheet, int row, String text) {
        return new Notice(true, place(sheet, row), text);
    }

    static Notice guess(String text) {
        return new Notice(false, "", text);
    }

    static Notice guess(Sheet sheet, int row, String text) {
        return new Notice(false, place(sheet, row), text);
    }

    static String place(Sheet sheet, int row) {
        return (sheet.name().isEmpty() ? "" : "sheet '" + sheet.name() + "', ") + "row " + row;
    }

    @Override
    public String toString() {
        return place.isEmpty() ? text : place + ": " + text;
    }
}
