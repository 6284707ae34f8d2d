package evenrise.solver.compare;

import evenrise.model.project.PanelType;
import java.util.Set;

/**
 * A type of panel at a place where it may hang.
 *
 * @param price of one at least, whatever their number, with its feeder, the work and percentages
 * @param lacks what of it has no price, and so is not in it
 */
record PanelKind(FeedPoint point, PanelType type, double price, Set<String> lacks) {
    PanelKind {
        lacks = Set.copyOf(lacks);
    }
}
