package evenrise.solver.intake;

import evenrise.model.contract.Words;
import evenrise.model.plan.Finding;
import evenrise.model.plan.Grade;
import evenrise.solver.table.ReadTable;

/**
 * Something to tell the user about one place of the list.
 *
 * @param place sheet, row and column, as a person finds them; empty for the list as a whole
 */
record Notice(Kind sort, String place, String text) implements Finding {
    enum Kind {
        /** The row could not be taken over. */
        PROBLEM,
        /** Taken for granted, for confirmation. */
        GUESS,
        /** Somebody has to decide. */
        QUESTION,
        /** Equipment that others feed. */
        OUTSIDE,
        /** A row, or a part of it, that is in no load: a sum, a heading, what lives on its network. */
        LEFT_OUT,
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
    public String check() {
        return "import";
    }

    @Override
    public String kind() {
        return Words.word(sort);
    }

    @Override
    public Grade gravity() {
        return switch (sort) {
            case PROBLEM -> Grade.BREAKS;
            case GUESS, QUESTION, OUTSIDE, LEFT_OUT -> Grade.NOTE;
            case NOT_READ -> Grade.NOT_CHECKED;
        };
    }

    @Override
    public String message() {
        return place.isEmpty() ? text : place + ": " + text;
    }
}
