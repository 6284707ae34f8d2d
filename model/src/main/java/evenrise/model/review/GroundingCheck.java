package evenrise.model.review;

import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.List;

/** Says of every separately derived system that nothing is known of its grounding, which no file states. */
final class GroundingCheck implements ElectricalCheck {
    private static final String ID = "grounding";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<String> derived = layout.distribution().points().stream()
                .filter(point -> point.transformer().isPresent() || point.isFurtherSource())
                .map(Point::id)
                .toList();
        findings.notChecked(
                ID,
                derived,
                "to be looked at on site: system bonding jumper, grounding electrode and its conductor of each"
                        + " separately derived system (NEC 250.30; IEC 60364-5-54), and whether a second source is one,"
                        + " which goes by its transfer switching the neutral");
    }
}
