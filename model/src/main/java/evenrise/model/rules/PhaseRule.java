package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
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
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            List<Phase> said = placement.assignment().phases();
            if (placement.fits() && !sorted(said).equals(sorted(placement.phases()))) {
                broken.add(Broken.by(BrokenKind.STALE_PHASES)
                        .load(placement.id())
                        .panel(placement.assignment().panel())
                        .word("said", said.isEmpty() ? "no phase" : "phases " + RuleWords.listed(said))
                        .word("slots", RuleWords.listed(placement.slots()))
                        .word("phases", RuleWords.listed(placement.phases()))
                        .at(RuleWords.seatOf(placement))
                        .build());
            }
        }
        return broken;
    }

    private static List<Phase> sorted(List<Phase> phases) {
        return phases.stream().sorted().toList();
    }
}
