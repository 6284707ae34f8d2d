package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Parts of a plan are to stay as they are in whatever is planned from now on, or are set free again.
 *
 * @param plan whose places are pinned; empty to set free
 * @param which loads it is about
 * @param times whether their switch-on times are pinned, too; without meaning where they are set free
 * @param into where the project is written
 * @since 0.1.0
 */
public record PinRequest(Source project, Optional<Source> plan, PinnedLoads which, boolean times, Path into) {}
