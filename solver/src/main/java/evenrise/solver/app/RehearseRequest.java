package evenrise.solver.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * What may happen is to be played on a plan: a script, else happenings in words, else an ordinary day.
 *
 * @param events each {@code [SECONDS:]WORD[=NUMBER][@WHICH]}, as on a command line
 * @param isIdle as if no show ran: what is on draws its idle current
 * @param trace where everything that happens is written, as CSV where the name ends so, else as JSON
 * @since 0.1.0
 */
public record RehearseRequest(
        Source project,
        Source plan,
        Optional<Source> script,
        List<String> events,
        boolean isIdle,
        Optional<Path> trace) {
    public RehearseRequest {
        events = List.copyOf(events);
    }

    /** An ordinary day under full use. */
    public static RehearseRequest of(Path project, Path plan) {
        return new RehearseRequest(
                Source.file(project), Source.file(plan), Optional.empty(), List.of(), false, Optional.empty());
    }
}
