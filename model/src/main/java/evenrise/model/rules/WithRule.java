package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.SubjectKind;
import java.util.ArrayList;
import java.util.List;

/** A load behind a contactor sits in the panel of the load that the contactor is for. */
final class WithRule implements Rule {
    @Override
    public String id() {
        return "with";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            placement
                    .load()
                    .comesWith()
                    .flatMap(layout::placement)
                    .filter(lead -> !lead.assignment()
                            .panel()
                            .equals(placement.assignment().panel()))
                    .ifPresent(lead -> broken.add(Broken.by(BrokenKind.AWAY_FROM_CONTACTOR)
                            .load(placement.id())
                            .panel(placement.assignment().panel())
                            .other(lead.id())
                            .one("there", SubjectKind.PANEL, lead.assignment().panel())
                            .at(RuleWords.seatOf(placement))
                            .build()));
        }
        return broken;
    }
}
