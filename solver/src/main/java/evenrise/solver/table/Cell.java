package evenrise.solver.table;

/**
 * One cell as a table has it.
 *
 * @param text as people see it, without blanks at its ends; empty for an empty cell
 * @param kind what the table says that it is
 */
public record Cell(String text, Kind kind) {
    public enum Kind {
        TEXT,
        NUMBER,
        DATE,
        /** A formula whose value is not in the file. */
        FORMULA,
        /** Such as #REF! or #DIV/0!. */
        ERROR
    }

    public static final Cell EMPTY = new Cell("", Kind.TEXT);

    public static Cell text(String text) {
        return new Cell(text.replace('\u00a0', ' ').strip(), Kind.TEXT);
    }

    public boolean isEmpty() {
        return text.isEmpty() && kind != Kind.FORMULA && kind != Kind.ERROR;
    }
}
