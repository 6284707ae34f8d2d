package evenrise.solver.tidy;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;

/** In which order people read places: panels and boards as the project has them, slots and outputs by number. */
final class PlaceOrder {
    /** What has no output stands before all that have one. */
    private static final long NO_OUTPUT = -1;

    private static final long MORE_THAN_ANY_BOARD_HAS = 10_000;

    private final Map<String, Integer> panels = new HashMap<>();
    private final Map<String, Integer> boards = new HashMap<>();

    PlaceOrder(Project project) {
        project.panels().stream().map(Panel::id).forEach(id -> panels.put(id, panels.size()));
        project.boards().stream().map(Board::id).forEach(id -> boards.put(id, boards.size()));
    }

    Comparator<Assignment> alongSlots() {
        return Comparator.<Assignment>comparingInt(each -> panels.getOrDefault(each.panel(), panels.size()))
                .thenComparingInt(Assignment::slot);
    }

    /** Rises along the outputs of a board, and from board to board. */
    long output(Assignment place) {
        return place.output().isEmpty() || place.board().isEmpty()
                ? NO_OUTPUT
                : boards.getOrDefault(place.board().get(), boards.size()) * MORE_THAN_ANY_BOARD_HAS
                        + place.output().getAsInt();
    }
}
