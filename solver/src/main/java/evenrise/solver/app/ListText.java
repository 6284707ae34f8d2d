package evenrise.solver.app;

/**
 * A text of an equipment list that was not read as it stands.
 *
 * @param of a field's name of a mapping's columns
 * @param written empty for an empty cell
 * @param name of the pieces, where that told; else empty
 * @param reads what it counts as
 * @param how guessed, asked or problem
 * @param rows where it stands
 * @since 0.1.0
 */
public record ListText(String of, String written, String name, String reads, String how, int rows) {}
