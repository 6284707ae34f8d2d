package evenrise.model.rules;

import evenrise.model.contract.Decimals;
import java.util.ArrayList;
import java.util.List;

/** A load sits where the system has the voltage that it states, within 5 %. */
final class VoltageRule implements Rule {
    @Override
    public String id() {
        return "voltage";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.fits() && placement.load().lineToNeutralVolts().isPresent()) {
                double stated = placement.load().lineToNeutralVolts().getAsDouble();
                double has = layout.distribution()
                        .of(placement.panel().orElseThrow())
                        .lineToNeutralVolts();
                if (Math.abs(has - stated) > WITHIN * stated) {
                    broken.add("load " + Say.quoted(placement.id()) + " is for " + Decimals.toThousandths(stated)
                            + " V to neutral, but panel " + Say.panelOf(placement) + " has "
                            + Decimals.toThousandths(has, stated)
                            + " V; 5 % are allowed. Maybe move it to a panel below another transformer.");
                }
            }
        }
        return broken;
    }

    private static final double WITHIN = 0.05;
}
