package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** A load sits where the system has the voltage that it states, within 5 %. */
final class VoltageRule implements Rule {
    @Override
    public String id() {
        return "voltage";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (placement.fits() && placement.load().lineToNeutralVolts().isPresent()) {
                double stated = placement.load().lineToNeutralVolts().getAsDouble();
                double has = layout.distribution()
                        .of(placement.panel().orElseThrow())
                        .lineToNeutralVolts();
                if (Math.abs(has - stated) > WITHIN * stated) {
                    broken.add(Broken.by(BrokenKind.OTHER_VOLTAGE)
                            .load(placement.id())
                            .panel(placement.assignment().panel())
                            .at(RuleWords.seatOf(placement))
                            .figure(has, stated, "V")
                            .build());
                }
            }
        }
        return broken;
    }

    private static final double WITHIN = 0.05;
}
