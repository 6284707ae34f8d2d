package evenrise.solver.grid;

/** No worker can be reached, or none that may be joined; the message says which. */
public final class GridUnavailable extends RuntimeException {
    private static final long serialVersionUID = 1;

    public GridUnavailable(String message) {
        super(message);
    }

    public GridUnavailable(String message, Throwable cause) {
        super(message, cause);
    }
}
