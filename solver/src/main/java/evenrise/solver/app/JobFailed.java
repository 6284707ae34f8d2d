package evenrise.solver.cli;

import java.util.List;

/** Ends a command with messages for its user and an exit code; it is no bug and shows no stack. */
final class Failure extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final int exitCode;
    private final transient List<String> messages;

    Failure(int exitCode, String message) {
        this(exitCode, List.of(message));
    }

    Failure(int exitCode, List<String> messages) {
        super(String.join("; ", messages));
        this.exitCode = exitCode;
        this.messages = List.copyOf(messages);
    }

    int exitCode() {
        return exitCode;
    }

    List<String> messages() {
        return messages;
    }
}
