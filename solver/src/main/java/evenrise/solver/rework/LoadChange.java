package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
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

    /** Whether its control lead is re-landed: another board or another output. */
    public boolean isReLanded() {
        return from.isEmpty()
                ? to.board().isPresent()
                : !from.get().board().equals(to.board()) || !from.get().output().equals(to.output());
    }

    /** Whether its breaker goes from one panel to another. */
    boolean changesPanel() {
        return from.filter(seat -> !seat.panel().equals(to.panel())).isPresent();
    }

    int moves() {
        return (isReTerminated() ? 1 : 0) + (isReLanded() ? 1 : 0);
    }
}
