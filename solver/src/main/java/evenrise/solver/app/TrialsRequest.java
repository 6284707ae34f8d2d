package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Switch-ons of a plan are to be drawn by chance: closing times, angles, inrush and voltage.
 *
 * @param trials how many
 * @param effort whose seed and threads count; what comes out does not depend on the threads
 * @param into where the percentiles are written as JSON
 * @param grid machines that draw instead of this one; what comes out does not depend on them
 * @since 0.1.0
 */
public record TrialsRequest(
        Source project, Source plan, int trials, Effort effort, Optional<Path> into, Optional<GridAccess> grid) {
    public TrialsRequest {
        if (trials < 1) {
            throw new IllegalArgumentException("trials is " + trials + ", expected at least 1");
        }
    }
}
