package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import java.util.Optional;

/**
 * A type of board that serves a system.
 *
 * @param system empty where the project has none
 * @param price of one, with the work
 */
record BoardKind(Optional<String> system, BoardType type, double price) {}
