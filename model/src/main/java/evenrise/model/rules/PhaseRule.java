package evenrise.model.rules;

import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;

/** The phases in the plan are those of the slots. */
final class PhaseRule implements Rule {
    @Override
    public String id() {
        return "phase";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            List<Phase> said = placement.assignment().phases();
            if (placement.fits() && !sorted(said).equals(sorted(placement.phases()))) {
                broken.add("load " + Say.quoted(placement.id()) + ": the plan says "
                        + (said.isEmpty() ? "no phase" : "phases " + Say.listed(said)) + ", but slots "
                        + Say.listed(placement.slots()) + " of panel " + Say.panelOf(placement) + " lie on "
                        + Say.listed(placement.phases()) + ". Maybe the slot was changed by hand: write "
                        + Say.listed(placement.phases()) + ".");
            }
        }
        return broken;
    }

    private static List<Phase> sorted(List<Phase> phases) {
        return phases.stream().sorted().toList();
    }
}
