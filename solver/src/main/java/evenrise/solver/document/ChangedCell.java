package evenrise.solver.document;

/**
 * One cell of the sheets that is another than before.
 *
 * @param what kind of thing: load, board, panel
 * @param name of a load
 * @param panel in which it is, or was where it is gone
 * @param key of the cell's column
 * @param cell its heading
 * @param before a text or a number, as {@code now}
 */
public record ChangedCell(
        String what, String id, String name, String panel, String key, String cell, Object before, Object now) {
    static final String LOAD = "load";
    static final String BOARD = "board";
    static final String PANEL = "panel";

    /** Stands for the key of what was not there, or is there no longer. */
    static final String IN_THE_PLAN = "inThePlan";

    boolean isOf(String kind) {
        return what.equals(kind);
    }
}
