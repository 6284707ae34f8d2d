package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** A load comes on no earlier than each load that it comes after, and after that one is settled. */
final class OrderRule implements WholePlantRule {
    @Override
    public String id() {
        return "order";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.isSequenced()) {
                for (String earlier : placement.load().comesAfter()) {
                    layout.placement(earlier)
                            .filter(Placement::isSequenced)
                            .filter(found -> placement.on() < found.settledSeconds() - Tolerances.SECONDS)
                            .ifPresent(found -> broken.add(
                                    Early.by(BrokenKind.BEFORE_EARLIER, placement, found, found.settledSeconds())));
                }
            }
        }
        return broken;
    }
}
