package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The neutral of the supply, of each panel and of its feeder's cable at the worst use of the one-pole loads, each on or off
 * by itself. The hard rule judges all of them on, where the fundamentals of three phases cancel.
 */
final class NeutralUseCheck implements ElectricalCheck {
    private static final String ID = "neutral-use";

    /** The figure may be so much above the true one, as {@link evenrise.model.electrical.WorstNeutral} says. */
    private static final double ROUNDING = 2e-9;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Fed> fed = Fed.all(layout);
        for (int i = 0; i < fed.size(); i++) {
            if (layout.worstNeutralAmps().get(i) > 0) {
                node(layout, fed.get(i), i, findings);
            }
        }
        List<String> bare = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            if (point.isSupply() || point.isFurtherSource() && point.feeder().isEmpty()) {
                continue;
            }
            double worst = beforeAmps(layout, point);
            Optional<FeederCable> cable = FeederCable.of(layout, point);
            if (cable.isEmpty() && worst > 0) {
                bare.add(point.id());
            }
            cable.ifPresent(it -> cable(layout, it, worst, findings));
        }
        findings.notChecked(ID, bare, "feeder.cable of a size that has a table, for its neutral");
    }

    /** In the neutral of a feeder: of a transformer on its primary side, what it passes on. */
    private static double beforeAmps(Layout layout, Point point) {
        double here = layout.worstNeutralAmps().get(point.index());
        return point.transformer()
                .map(it -> it.passesNeutralOn() ? it.ratio() * here : 0)
                .orElse(here);
    }

    private static void node(Layout layout, Fed fed, int index, Remarks findings) {
        double worst = layout.worstNeutralAmps().get(index);
        NodeFigures figures = layout.nodes().get(index);
        findings.made(ID, fed.node());
        double allowed = fed.limits().neutralAmps();
        findings.add(new Quantity(fed.node(), "neutral at worst use", worst, "A").atMost(allowed, clause(layout)));
        if (isOver(worst, allowed)) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("over-at-worst-use")
                    .grade(Grade.BREAKS)
                    .place(fed.node())
                    .figure(worst)
                    .limit(allowed)
                    .unit("A")
                    .clause(clause(layout))
                    .message("the neutral of " + fed.label() + " carries up to " + HUNDREDTHS.amps(worst, allowed)
                            + " at the worst use of its one-pole loads (" + HUNDREDTHS.amps(figures.neutralAmps())
                            + " with all of them on), allowed are " + HUNDREDTHS.amps(allowed, worst)
                            + " (neutral_factor "
                            + fed.limits().neutralFactor() + ")")
                    .cure("take a larger neutral, or loads of two or three poles")
                    .build());
        }
    }

    private static void cable(Layout layout, FeederCable cable, double worst, Remarks findings) {
        findings.made(ID, cable.duty().place());
        double allowed = cable.neutralAmps();
        findings.add(new Quantity(cable.duty().place(), "neutral of its feeder at worst use", worst, "A")
                .atMost(allowed, clause(layout)));
        if (isOver(worst, allowed)) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("cable-over-at-worst-use")
                    .grade(Grade.BREAKS)
                    .place(cable.duty().place())
                    .figure(worst)
                    .limit(allowed)
                    .unit("A")
                    .clause(clause(layout))
                    .message("the neutral of " + cable.duty().label() + " ("
                            + cable.run().text() + ") carries up to " + HUNDREDTHS.amps(worst, allowed)
                            + " at the worst use of its one-pole loads, its ampacity is "
                            + HUNDREDTHS.amps(allowed, worst)
                            + " (" + cable.neutralText() + ")")
                    .cure("take a larger size, a neutral of 200 %, or loads of two or three poles")
                    .build());
        }
    }

    private static boolean isOver(double worst, double allowed) {
        return worst > allowed * (1 + ROUNDING) + 1e-6;
    }

    private static String clause(Layout layout) {
        List<Practice> practices = FeederCable.practices(layout);
        if (practices.size() > 1) {
            return "NEC 220.61(A), IEC 60364-5-52 clause 524.2";
        }
        return practices.get(0) == Practice.NEC ? "NEC 220.61(A)" : "IEC 60364-5-52 clause 524.2";
    }
}
