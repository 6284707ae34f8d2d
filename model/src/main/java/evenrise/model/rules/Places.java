package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;

/** Finds the slots, phases and board that one assignment names, whatever else is in the plan. */
final class Places {
    private final ProjectIndex index;

    Places(ProjectIndex index) {
        this.index = index;
    }

    /** The board whose output the assignment names; empty for an unswitched load, for one behind another's
     * contactor, and where there is no such output. */
    Optional<Board> switchingBoard(Assignment assignment) {
        boolean switched = index.load(assignment.load())
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .isPresent();
        if (!switched || assignment.output().isEmpty()) {
            return Optional.empty();
        }
        int output = assignment.output().getAsInt();
        return assignment
                .board()
                .flatMap(index::board)
                .filter(board -> output >= 1 && output <= index.typeOf(board).outputs());
    }

    /**
     * Refuses a slot beyond the panel before any arithmetic on it, which could overflow; and more poles than the panel's
     * system has phases.
     */
    List<Integer> slotsAt(Assignment assignment, int poles) {
        return index.panel(assignment.panel())
                .filter(panel -> assignment.slot() <= panel.slots())
                .filter(panel -> poles
                        <= index.distribution().of(panel).system().phases().size())
                .map(panel -> index.slotsOf(panel).span(assignment.slot(), poles))
                .orElse(List.of());
    }

    /** Phases that a breaker of {@code poles} poles touches there, in the order of its slots; none where it does not fit. */
    List<Phase> phasesAt(Assignment assignment, int poles) {
        return index.panel(assignment.panel()).map(index::slotsOf).stream()
                .flatMap(geometry -> slotsAt(assignment, poles).stream().map(geometry::phase))
                .toList();
    }
}
