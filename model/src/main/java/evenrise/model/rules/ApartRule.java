package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** Loads that are to be apart sit in different panels. */
final class ApartRule implements Rule {
    @Override
    public String id() {
        return "apart";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.fits()) {
                for (String other : placement.load().apartFrom()) {
                    layout.placement(other)
                            .filter(found -> found.assignment()
                                    .panel()
                                    .equals(placement.assignment().panel()))
                            .ifPresent(found -> broken.add(Broken.by(BrokenKind.TOGETHER)
                                    .load(placement.id())
                                    .other(other)
                                    .panel(placement.assignment().panel())
                                    .at(RuleWords.seatOf(placement))
                                    .build()));
                }
            }
        }
        return broken;
    }
}
