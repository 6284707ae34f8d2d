package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import java.util.Optional;
import java.util.Set;

/**
 * A type of board that serves a system.
 *
 * @param system empty where the project has none
 * @param price of one at least, whatever their number, with the work and percentages
 * @param lacks what of it has no price, and so is not in it
 */
record BoardKind(Optional<String> system, BoardType type, double price, Set<String> lacks) {
    BoardKind {
        lacks = Set.copyOf(lacks);
    }
}
