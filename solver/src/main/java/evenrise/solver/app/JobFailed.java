package evenrise.solver.app;

import java.util.List;

/**
 * Ends a job that cannot be done, with messages for whoever asked for it; it is no bug. Whatever else a job throws is one.
 *
 * @since 0.1.0
 */
public final class JobFailed extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What the job failed at. */
    public enum Reason {
        /** What is asked for contradicts itself. */
        REQUEST,
        /** An input is missing, unreadable or not what the contract says; every problem is a message. */
        INPUT,
        /** An output could not be written; an earlier file is whole. */
        OUTPUT,
        /** No worker can be reached, or none that may be joined. */
        GRID,
        /** It was ended before there was anything to write. */
        CANCELLED
    }

    private final Reason reason;
    private final transient List<String> messages;

    public JobFailed(Reason reason, String message) {
        this(reason, List.of(message));
    }

    public JobFailed(Reason reason, List<String> messages) {
        super(String.join("; ", messages));
        this.reason = reason;
        this.messages = List.copyOf(messages);
    }

    public Reason reason() {
        return reason;
    }

    /** A line each. */
    public List<String> messages() {
        return messages;
    }
}
