package evenrise.solver.engine;

import java.time.Duration;

/** How long a search may go on. */
public sealed interface Budget {
    /** Wall time, from the call; what is found depends on the machine. */
    record Time(Duration limit) implements Budget {}

    /** Moves tried by each search; what is found is the same each time. */
    record Moves(long limit) implements Budget {}

    /** A part of it for one of several searches: time is shared, moves are each search's own. */
    default Budget part(double part) {
        return this instanceof Time time
                ? new Time(Duration.ofMillis(Math.round(time.limit().toMillis() * part)))
                : this;
    }
}
