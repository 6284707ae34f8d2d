package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.rules.ProjectIndex;
import java.util.Optional;

/**
 * One load that is elsewhere afterwards.
 *
 * @param from where it is as built; empty where it has no breaker yet
 * @param to where it goes
 */
public record LoadChange(String load, Optional<Assignment> from, Assignment to) {
    /** Whether its breaker is re-terminated: another panel or another slot. */
    public boolean isReTerminated() {
        return from.isEmpty()
                || !from.get().panel().equals(to.panel())
                || from.get().slot() != to.slot();
    }

    /**
     * Whether its control lead is worked on: another board or another output, or a breaker in another panel, which the
     * lead does not reach.
     */
    public boolean isReLanded() {
        return from.isEmpty()
                ? to.board().isPresent()
                : !from.get().board().equals(to.board()) || !from.get().output().equals(to.output()) || leavesItsLead();
    }

    /** Whether the lead stays on its output and is drawn anew, since the breaker goes to another panel. */
    boolean leavesItsLead() {
        return changesPanel() && to.board().isPresent();
    }

    /** What work its breaker is; empty where it stays. */
    public Optional<MoveKind> breakerKind() {
        if (!isReTerminated()) {
            return Optional.empty();
        }
        return Optional.of(
                from.isEmpty() ? MoveKind.NEW_CIRCUIT : changesPanel() ? MoveKind.OTHER_PANEL : MoveKind.SAME_PANEL);
    }

    /** What work its control lead is; empty where it stays. */
    Optional<MoveKind> leadKind(ProjectIndex index) {
        if (!isReLanded()) {
            return Optional.empty();
        }
        Optional<String> before =
                from.flatMap(Assignment::board).flatMap(index::board).map(Board::panel);
        Optional<String> after = to.board().flatMap(index::board).map(Board::panel);
        boolean isDrawn = after.isPresent() && (leavesItsLead() || !before.equals(after));
        return Optional.of(isDrawn ? MoveKind.DRAWN_LEAD : MoveKind.LEAD);
    }

    /** Whether its breaker goes from one panel to another. */
    boolean changesPanel() {
        return from.filter(seat -> !seat.panel().equals(to.panel())).isPresent();
    }

    int moves() {
        return (isReTerminated() ? 1 : 0) + (isReLanded() ? 1 : 0);
    }
}
