package evenrise.solver.app;

import java.util.List;

/**
 * What can be told on a screen.
 *
 * @since 0.1.0
 */
@FunctionalInterface
public interface Listing {
    /** A line each; names in them are made harmless. */
    List<String> text(TextStyle style);
}
