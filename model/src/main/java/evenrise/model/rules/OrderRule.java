package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** A load comes on no earlier than each load that it comes after, and after that one is settled. */
final class OrderRule implements Rule {
    @Override
    public String id() {
        return "order";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.isSequenced()) {
                for (String earlier : placement.load().comesAfter()) {
                    layout.placement(earlier)
                            .filter(Placement::isSequenced)
                            .filter(found -> placement.on() < found.settledSeconds() - Tolerances.SECONDS)
                            .ifPresent(found -> broken.add(Say.early(placement, found.settledSeconds()) + "load "
                                    + Say.quoted(earlier)
                                    + ", which it comes after, is settled only at "
                                    + Say.seconds(found.settledSeconds(), placement.on()) + Say.later(placement)));
                }
            }
        }
        return broken;
    }
}
