package evenrise.solver.engine;

import java.time.Duration;

/** How long a search may go on. */
public sealed interface Budget {
    /** Wall time, from the call; what is found depends on the machine. */
    record Time(Duration limit) implements Budget {}

    /** Moves tried by each search; what is found is the same each time. */
    record Moves(long limit) implements Budget {}
}
