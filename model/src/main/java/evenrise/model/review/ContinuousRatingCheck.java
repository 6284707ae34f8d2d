package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Panels that take over from the supply that more than 80 % of a rating may run continuously, though neither they state a
 * part of their own nor their devices are said to carry their whole rating: judged at 80 %, too.
 */
final class ContinuousRatingCheck implements ElectricalCheck {
    private static final String ID = "continuous-rating";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Point> kept = new ArrayList<>();
        for (Point panel : layout.distribution().points()) {
            if (!panel.isSupply() && ContinuousPart.isDoubtful(layout, panel)) {
                findings.made(ID, panel.id());
                double allowed = ContinuousPart.USUAL * panel.ratedAmps();
                double most = highestAmps(layout, panel);
                findings.add(new Quantity(panel.id(), "running current beside 80 % of the rating", most, "A")
                        .atMost(allowed, clause(layout)));
                if (most > allowed + 1e-6) {
                    over(layout, panel, most, allowed, findings);
                } else {
                    kept.add(panel);
                }
            }
        }
        if (!kept.isEmpty()) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("kept-anyway")
                    .grade(Grade.NOTE)
                    .place(kept.size() == 1 ? kept.get(0).id() : Remarks.PLANT)
                    .clause(clause(layout))
                    .subjects(findings.about(
                            kept.stream().map(panel -> panel.id()).toList()))
                    .message("no continuous_fraction of their own state "
                            + kept.stream()
                                    .map(panel -> Phrase.quoted(panel.id()))
                                    .collect(Collectors.joining(", "))
                            + ", and the supply's " + part(layout) + " was used; they keep 80 % of their ratings, too.")
                    .build());
        }
    }

    private static void over(Layout layout, Point panel, double most, double allowed, Remarks findings) {
        boolean isNec = FeederCable.practices(layout).equals(List.of(Practice.NEC));
        findings.add(Remark.builder()
                .check(ID)
                .kind("over-usual-part")
                .grade(isNec ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(panel.id())
                .figure(most)
                .limit(allowed)
                .unit("A")
                .clause(clause(layout))
                .message(panel.label() + " runs at " + HUNDREDTHS.amps(most, allowed)
                        + " and states no continuous_fraction; the supply's " + part(layout)
                        + " was used, while 80 % of its rating are " + HUNDREDTHS.amps(allowed, most))
                .cure("state the part that its maker allows, that its feeder is fully_rated, or" + " move loads")
                .build());
    }

    private static double highestAmps(Layout layout, Point panel) {
        return Collections.max(layout.fullUse().running(panel).byPhase().values());
    }

    private static String part(Layout layout) {
        return TENTHS.percent(100 * layout.project().supply().continuousFraction());
    }

    /** Of an assembly by IEC practice its maker states the part, the rated diversity factor (from memory). */
    private static String clause(Layout layout) {
        return FeederCable.practices(layout).contains(Practice.NEC)
                ? "NEC 215.3"
                : "IEC 61439-1, rated diversity factor";
    }
}
