package evenrise.solver.grid;

/** How a job is worked on: the same bytes in give the same bytes out, wherever that is done. */
@FunctionalInterface
public interface GridWork {
    /**
     * @param stop when it comes, what is returned is dropped, and it had better be soon
     * @throws InvalidInput where the input is none that can be worked on
     */
    byte[] output(byte[] input, StopSignal stop) throws InvalidInput;

    /** Says what is wrong with an input. */
    final class InvalidInput extends Exception {
        private static final long serialVersionUID = 1;

        public InvalidInput(String message) {
            super(message);
        }
    }
}
