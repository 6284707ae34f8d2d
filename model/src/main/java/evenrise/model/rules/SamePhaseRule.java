package evenrise.model.rules;

import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;

/** Loads that belong on the same phases touch the same ones, below the same transformer or source. */
final class SamePhaseRule implements Rule {
    @Override
    public String id() {
        return "same-phase";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            for (String other : load.samePhaseAs()) {
                List<Phase> here = phases(layout, load.id());
                List<Phase> there = phases(layout, other);
                if (!here.isEmpty()
                        && !there.isEmpty()
                        && here.equals(there)
                        && differInOrigin(layout, load.id(), other)) {
                    broken.add("loads " + Say.quoted(load.id()) + " and " + Say.quoted(other)
                            + " must touch the same phases, but sit below different transformers or sources."
                            + " Maybe move one of them to a panel below the other's.");
                }
                if (!here.isEmpty() && !there.isEmpty() && !here.equals(there)) {
                    broken.add(
                            "load " + Say.quoted(load.id()) + " touches " + Say.listed(here)
                                    + ", load " + Say.quoted(other) + " touches " + Say.listed(there)
                                    + ", but both must touch the same phases. Maybe move one of them to a row of the other's phase.");
                }
            }
        }
        return broken;
    }

    private static boolean differInOrigin(Layout layout, String one, String other) {
        return origin(layout, one) != origin(layout, other);
    }

    private static int origin(Layout layout, String load) {
        Panel panel = layout.placement(load).flatMap(Placement::panel).orElseThrow();
        return layout.distribution().of(panel).origin();
    }

    private static List<Phase> phases(Layout layout, String load) {
        return layout.placement(load).stream()
                .flatMap(placement -> placement.phases().stream())
                .sorted()
                .toList();
    }
}
