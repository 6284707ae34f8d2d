package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** A load behind a contactor sits in the panel of the load that the contactor is for. */
final class WithRule implements Rule {
    @Override
    public String id() {
        return "with";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            placement
                    .load()
                    .comesWith()
                    .flatMap(layout::placement)
                    .filter(lead -> !lead.assignment()
                            .panel()
                            .equals(placement.assignment().panel()))
                    .ifPresent(lead -> broken.add("load " + Say.quoted(placement.id()) + " sits in panel "
                            + Say.panelOf(placement) + ", but the contactor that it is behind, of load "
                            + Say.quoted(lead.id()) + ", in " + Say.panelOf(lead)
                            + ". Maybe move it there, or let it come with another load."));
        }
        return broken;
    }
}
