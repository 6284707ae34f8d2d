package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Which sizes would be enough.
 *
 * @param plan that says what hangs on which panel; without one feeders are not sized, and branches by current alone
 * @param place load, panel or node that alone is told, with all its arithmetic; everything where empty
 * @since 0.1.0
 */
public record SizeRequest(Source project, Optional<Source> plan, Optional<String> place) {
    public static SizeRequest of(Path project, Path plan) {
        return new SizeRequest(Source.file(project), Optional.of(Source.file(plan)), Optional.empty());
    }
}
