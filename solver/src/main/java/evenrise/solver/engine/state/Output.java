package evenrise.solver.engine.state;

/**
 * One output of a board.
 *
 * @param index position in {@link CompiledProject#outputs}
 * @param board index of the board
 * @param ordinal position on the board, from 0
 */
public record Output(int index, int board, int ordinal) {
    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return index;
    }
}
