package evenrise.solver.tidy;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import java.util.HashSet;
import java.util.List;

/** A panel's slots as numbers: which ones a breaker of so many poles takes, on which phases. */
final class SlotGeometry {
    private static final int MOST_POLES = 3;
    private static final int[] NOWHERE = {};

    final int slots;
    private final SlotLayout layout;
    private final int[][][] spans;
    private final boolean[][] touchesEach;

    SlotGeometry(Panel panel, SlotLayout layout) {
        this.slots = panel.slots();
        this.layout = layout;
        this.spans = new int[MOST_POLES + 1][slots + 1][];
        this.touchesEach = new boolean[MOST_POLES + 1][slots + 1];
        for (int poles = 1; poles <= MOST_POLES; poles++) {
            for (int slot = 1; slot <= slots; slot++) {
                List<Integer> span = layout.span(slot, poles);
                spans[poles][slot] = span.isEmpty()
                        ? NOWHERE
                        : span.stream().mapToInt(Integer::intValue).toArray();
                touchesEach[poles][slot] = !span.isEmpty()
                        && new HashSet<>(span.stream().map(layout::phase).toList()).size() == poles;
            }
        }
    }

    /** Slots of a breaker whose first pole is in {@code slot}; none where it does not fit. */
    int[] span(int slot, int poles) {
        return spans[poles][slot];
    }

    /** Whether its poles touch different phases there. */
    boolean takes(int slot, int poles) {
        return touchesEach[poles][slot];
    }

    /** Whether a breaker touches the same phases in the same order in both places. */
    boolean samePhases(int slot, int other, int poles) {
        int[] here = span(slot, poles);
        int[] there = span(other, poles);
        if (here.length != there.length) {
            return false;
        }
        for (int pole = 0; pole < here.length; pole++) {
            if (phase(here[pole]) != phase(there[pole])) {
                return false;
            }
        }
        return true;
    }

    Phase phase(int slot) {
        return layout.phase(slot);
    }

    int row(int slot) {
        return layout.row(slot);
    }
}
