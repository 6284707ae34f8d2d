package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** Loads that are to be apart sit in different panels. */
final class ApartRule implements Rule {
    @Override
    public String id() {
        return "apart";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.fits()) {
                for (String other : placement.load().apartFrom()) {
                    layout.placement(other)
                            .filter(found -> found.assignment()
                                    .panel()
                                    .equals(placement.assignment().panel()))
                            .ifPresent(found -> broken.add("loads " + Say.quoted(placement.id()) + " and "
                                    + Say.quoted(other) + " must be apart, but both sit in panel "
                                    + Say.panelOf(placement) + ". Maybe move one of them to another panel."));
                }
            }
        }
        return broken;
    }
}
