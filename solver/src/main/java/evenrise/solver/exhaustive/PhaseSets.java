package evenrise.solver.exhaustive;

import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import java.util.List;
import java.util.TreeSet;

/** Which phases slots give a load, whoever else sits there: sets as bits, in the order of the supply's phases. */
final class PhaseSets {
    private final Project project;
    private final List<Phase> phases;

    PhaseSets(Project project) {
        this.project = project;
        this.phases = project.supply().system().phases();
    }

    /** Rising, each once. */
    int[] of(Load load) {
        TreeSet<Integer> sets = new TreeSet<>();
        for (Panel panel : project.panels()) {
            if (load.maySitIn(panel.id())) {
                SlotLayout layout = new SlotLayout(panel, project.supply().system());
                for (int slot = 1; slot <= panel.slots(); slot++) {
                    List<Integer> span = layout.span(slot, load.poles());
                    int set = bits(span.stream().map(layout::phase).toList());
                    if (Integer.bitCount(set) == load.poles()
                            && load.fixed().slot().orElse(slot) == slot
                            && panel.takes(span, load.switched())) {
                        sets.add(set);
                    }
                }
            }
        }
        return sets.stream().mapToInt(set -> set).toArray();
    }

    /** The phases of a set, in the supply's order. */
    List<Phase> phases(int set) {
        return phases.stream()
                .filter(phase -> (set & 1 << phases.indexOf(phase)) != 0)
                .toList();
    }

    private int bits(List<Phase> some) {
        return some.stream().mapToInt(phase -> 1 << phases.indexOf(phase)).reduce(0, (one, other) -> one | other);
    }
}
