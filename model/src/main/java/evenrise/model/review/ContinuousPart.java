package evenrise.model.review;

import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;

/** The part of its rating that a panel may be judged to carry continuously where it says nothing of its own. */
final class ContinuousPart {
    /** What equipment carries that is not listed for its whole rating; 1/1.25 of NEC 215.3. */
    static final double USUAL = 0.8;

    private ContinuousPart() {}

    /** Whether it takes over more than the usual part from the supply, and neither it nor its device is said to bear it. */
    static boolean isDoubtful(Layout layout, Panel panel) {
        Supply supply = layout.project().supply();
        boolean isFullyRated = panel.feeder().map(Feeder::fullyRated).orElse(false);
        return panel.continuousFraction().isEmpty() && supply.continuousFraction() > USUAL && !isFullyRated;
    }

    /** The part by which room for more load is judged: IEC practice knows no such reduction. */
    static double judged(Layout layout, Panel panel) {
        double stated = panel.continuousFractionUnder(layout.project().supply());
        boolean isNec = FeederCable.practices(layout).contains(Practice.NEC);
        return isNec && isDoubtful(layout, panel) ? USUAL : stated;
    }
}
