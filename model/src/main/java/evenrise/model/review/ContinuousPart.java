package evenrise.model.review;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Supply;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.OptionalDouble;

/** The part of its rating that a panel or node may be judged to carry continuously where it says nothing of its own. */
final class ContinuousPart {
    /** What equipment carries that is not listed for its whole rating; 1/1.25 of NEC 215.3. */
    static final double USUAL = 0.8;

    private ContinuousPart() {}

    /** Whether it takes over more than the usual part from the supply, and neither it nor its device is said to bear it. */
    static boolean isDoubtful(Layout layout, Point point) {
        Supply supply = layout.project().supply();
        boolean isFullyRated = point.feeder().map(Feeder::fullyRated).orElse(false);
        return own(point).isEmpty() && supply.continuousFraction() > USUAL && !isFullyRated;
    }

    /** The part by which room for more load is judged: IEC practice knows no such reduction. */
    static double judged(Layout layout, Point point) {
        double stated = own(point).orElse(layout.project().supply().continuousFraction());
        boolean isNec = FeederCable.practices(layout).contains(Practice.NEC);
        return isNec && isDoubtful(layout, point) ? USUAL : stated;
    }

    private static OptionalDouble own(Point point) {
        return point.panel()
                .map(Panel::continuousFraction)
                .or(() -> point.node().map(DistributionNode::continuousFraction))
                .orElse(OptionalDouble.empty());
    }
}
