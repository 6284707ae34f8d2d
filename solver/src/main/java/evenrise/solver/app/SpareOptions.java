package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * Breakers that feed nothing.
 *
 * @param table a panel schedule, CSV or XLSX, whose spare rows say which are there; that of the plan as built counts anyway
 * @param leaves whether those of gear that is gone stay as spares where nobody needs their slots
 * @since 0.1.0
 */
public record SpareOptions(Optional<Path> table, boolean leaves) {
    public static final SpareOptions NONE = new SpareOptions(Optional.empty(), false);
}
