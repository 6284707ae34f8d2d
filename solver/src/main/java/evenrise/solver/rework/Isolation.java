package evenrise.solver.rework;

import evenrise.model.project.Board;
import evenrise.model.project.Panel;
import evenrise.model.rules.ProjectIndex;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is dead while work goes on: the panels in which a breaker is worked on, save those whose maker says that it may be
 * done under load; the boards in them; and the boards whose leads are moved, save those of extra-low voltage.
 *
 * @param boards without those in panels that are dead
 * @param below panels and nodes that are dead with the panels, since these feed them
 */
record Isolation(Set<String> panels, Set<String> boards, Set<String> below) {
    /** Parts of at least this voltage to earth are dead before somebody works on them: OSHA 1910.333(a)(1). */
    static final double LIVE_VOLTS = 50;

    static Isolation of(ProjectIndex index, Collection<LoadChange> changes) {
        return of(index, changes, List.of());
    }

    static Isolation of(ProjectIndex index, Collection<LoadChange> changes, Collection<Removal> removals) {
        Set<String> panels = new TreeSet<>();
        Set<String> boards = new TreeSet<>();
        for (LoadChange change : changes) {
            if (change.isReTerminated()) {
                change.from().ifPresent(seat -> panels.add(seat.panel()));
                panels.add(change.to().panel());
            }
            if (change.isReLanded()) {
                change.from().flatMap(seat -> seat.board()).ifPresent(boards::add);
                change.to().board().ifPresent(boards::add);
            }
        }
        for (Removal each : removals) {
            panels.add(each.from().panel());
            each.from().board().ifPresent(boards::add);
        }
        panels.removeIf(id -> index.panel(id).filter(Isolation::isDeadAtWork).isEmpty());
        Set<String> below = Downstream.below(index, panels);
        boards.removeIf(id -> index.board(id)
                .filter(board -> isDeadAtWork(board)
                        && Downstream.supplies(board).stream()
                                .noneMatch(each -> panels.contains(each) || below.contains(each)))
                .isEmpty());
        return new Isolation(panels, boards, below);
    }

    static boolean isDeadAtWork(Panel panel) {
        return panel.withdrawableUnderLoad().isEmpty();
    }

    static boolean isDeadAtWork(Board board) {
        return board.outputVolts().isEmpty() || board.outputVolts().getAsDouble() >= LIVE_VOLTS;
    }

    /** The panels in the order in which they are isolated: each before those that feed it. */
    List<String> bottomUp(ProjectIndex index) {
        return panels.stream()
                .sorted(Comparator.comparingInt((String panel) -> -Downstream.depth(index, panel)))
                .toList();
    }

    /** The panels in the order in which they become live again: each after those that feed it. */
    List<String> topDown(ProjectIndex index) {
        return panels.stream()
                .sorted(Comparator.comparingInt((String panel) -> Downstream.depth(index, panel)))
                .toList();
    }

    int size() {
        return panels.size() + boards.size();
    }

    /** Whether a load has no current then: its panel is dead, or the board that switches it. */
    boolean takesOff(ProjectIndex index, String panel, Optional<String> board) {
        return panels.contains(panel)
                || below.contains(panel)
                || board.filter(id -> isDead(index, id)).isPresent();
    }

    private boolean isDead(ProjectIndex index, String board) {
        return boards.contains(board)
                || index.board(board)
                        .filter(found -> Downstream.supplies(found).stream()
                                .anyMatch(id -> panels.contains(id) || below.contains(id)))
                        .isPresent();
    }
}
