package evenrise.solver.app;

/**
 * How tables of values are written.
 *
 * @param keys whether columns are headed by keys with units, as fields of a project are spelt, and not by words
 * @param mark whether a byte-order mark stands first: some spreadsheets read letters beyond ASCII by it alone
 * @since 0.1.0
 */
public record CsvStyle(boolean keys, boolean mark) {
    /** Headed by words, without a mark. */
    public static final CsvStyle USUAL = new CsvStyle(false, false);
}
