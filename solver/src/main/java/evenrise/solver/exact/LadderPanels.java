package evenrise.solver.exact;

import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import evenrise.solver.bounds.ProvenBounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is charged for being off balance: the supply, and panels. A place is a panel, or all of them where they are not told
 * apart: since a sum of deviations is never below the deviation of the sum, that only lowers what is charged.
 */
final class LadderPanels {
    /**
     * Phases that are charged for what they carry more or less than their mean.
     *
     * @param weight of an ampere of the greatest of these differences
     * @param place that feeds what counts; empty for all
     */
    record Balance(double weight, Optional<Integer> place) {

        boolean counts(int where) {
            return place.isEmpty() || place.get() == where;
        }
    }

    private final List<Panel> panels;
    private final boolean tellsApart;
    final List<Balance> balances = new ArrayList<>();

    /** @param tellsApart whether each panel is a place of its own */
    LadderPanels(Project project, boolean tellsApart) {
        this.panels = project.panels();
        this.tellsApart = tellsApart;
        ObjectiveWeights weights = project.objective();
        boolean addUp = ProvenBounds.panelsDeviateAsMuch(project);
        double ofPanels = !tellsApart && addUp ? weights.panelImbalance() : 0;
        balances.add(new Balance(weights.supplyImbalance() + ofPanels, Optional.empty()));
        for (int i = 0; tellsApart && i < panels.size(); i++) {
            if (hasAllPhases(project, panels.get(i))) {
                balances.add(new Balance(weights.panelImbalance(), Optional.of(i)));
            }
        }
    }

    /** A panel that lacks a phase has another mean; it is not charged. */
    private static boolean hasAllPhases(Project project, Panel panel) {
        return new SlotLayout(panel, project.supply().system()).phases().size()
                == project.supply().system().phases().size();
    }

    int places() {
        return tellsApart ? panels.size() : 1;
    }

    /** Of each place. */
    boolean[] whereMaySit(Load load) {
        boolean[] where = new boolean[places()];
        for (int i = 0; i < panels.size(); i++) {
            where[tellsApart ? i : 0] |= maySit(load, panels.get(i).id());
        }
        return where;
    }

    private static boolean maySit(Load load, String panel) {
        return (load.panels().isEmpty() || load.panels().contains(panel))
                && load.fixed().panel().map(panel::equals).orElse(true);
    }
}
