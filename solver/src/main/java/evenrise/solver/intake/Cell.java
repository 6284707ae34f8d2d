package evenrise.solver.intake;

/**
 * One cell as a sheet has it.
 *
 * @param text as people see it, without blanks at its ends; empty for an empty cell
 * @param kind what the sheet says that it is
 */
record Cell(String text, Kind kind) {
    enum Kind {
        TEXT,
        NUMBER,
        DATE,
        /** A formula whose value is not in the file. */
        FORMULA,
        /** Such as #REF! or #DIV/0!. */
        ERROR
    }

    static final Cell EMPTY = new Cell("", Kind.TEXT);

    static Cell text(String text) {
        return new Cell(text.replace('\u00a0', ' ').strip(), Kind.TEXT);
    }

    boolean isEmpty() {
        return text.isEmpty() && kind != Kind.FORMULA && kind != Kind.ERROR;
    }
}
