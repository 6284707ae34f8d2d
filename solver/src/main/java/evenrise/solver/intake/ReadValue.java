package evenrise.solver.intake;

/**
 * How a text of a column was read.
 *
 * @param of a field's name of a mapping's columns
 * @param written empty for an empty cell
 * @param name of the pieces, where that told; else empty
 * @param reads what it counts as
 * @param rows where it stands
 */
public record ReadValue(String of, String written, String name, String reads, How how, int rows) {
    /** How sure a reading is. */
    public enum How {
        /** As it stands. */
        STATED,
        /** Somebody is to confirm it. */
        GUESSED,
        /** Somebody has to decide. */
        ASKED,
        /** It could not be read. */
        PROBLEM
    }
}
