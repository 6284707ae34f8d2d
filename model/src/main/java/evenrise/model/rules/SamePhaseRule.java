package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
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
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            for (String other : load.samePhaseAs()) {
                List<Phase> here = phases(layout, load.id());
                List<Phase> there = phases(layout, other);
                if (!here.isEmpty()
                        && !there.isEmpty()
                        && here.equals(there)
                        && differInOrigin(layout, load.id(), other)) {
                    broken.add(Broken.by(BrokenKind.OTHER_ORIGIN)
                            .load(load.id())
                            .other(other)
                            .at(seat(layout, load.id()))
                            .build());
                }
                if (!here.isEmpty() && !there.isEmpty() && !here.equals(there)) {
                    broken.add(Broken.by(BrokenKind.OTHER_PHASES)
                            .load(load.id())
                            .other(other)
                            .word("here", RuleWords.listed(here))
                            .word("there", RuleWords.listed(there))
                            .at(seat(layout, load.id()))
                            .build());
                }
            }
        }
        return broken;
    }

    private static String seat(Layout layout, String load) {
        return layout.placement(load).map(RuleWords::seatOf).orElse("");
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
