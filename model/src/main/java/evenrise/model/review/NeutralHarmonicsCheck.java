package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.electrical.TriplenNeutral;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Load;
import evenrise.model.rules.Layout;
import evenrise.model.rules.UseCurrents;
import java.util.Collections;

/**
 * The neutral of the supply and of each panel under both readings of a third harmonic, at full use and at idle, beside
 * neutrals of 100 % and of 200 %. The hard rule goes by the first reading at full use; this says what the others would.
 */
final class NeutralHarmonicsCheck implements ElectricalCheck {
    private static final String ID = "neutral-harmonics";

    /** In scenes the rule goes by the worst of them, this by full use. */
    private static final String BY_FUNDAMENTAL = "rule neutral";

    private static final String BY_LINE = "IEC 60364-5-52 annex E";

    /** A neutral that carries what the line carries differs from it by the last bits alone. */
    private static final double LAST_BITS = 1e-9;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        // A third harmonic of k times the line current I beside a fundamental of I: the rms current is taken as √(1 +
        // k²)·I.
        Uses uses = new Uses(
                layout.fullUse(),
                UseCurrents.of(layout, Load::idleAmps),
                UseCurrents.of(
                        layout,
                        load -> load.runningAmps() * Math.sqrt(1 + load.harmonicRatio() * load.harmonicRatio())));
        for (Fed fed : Fed.all(layout)) {
            if (!fed.seen().isEmpty()) {
                review(fed, uses, findings);
            }
        }
    }

    private record Uses(UseCurrents full, UseCurrents idle, UseCurrents byLine) {}

    private static void review(Fed fed, Uses uses, Remarks findings) {
        String node = fed.node();
        findings.made(ID, node);
        double byFundamental = uses.full().neutralAmps(fed.point());
        double atIdle = uses.idle().neutralAmps(fed.point());
        double byLine = uses.byLine().neutralAmps(fed.point());
        double line = Collections.max(uses.full().running(fed.point()).byPhase().values());
        double full = fed.limits().ratedAmps();
        double capacity = fed.limits().neutralAmps();
        findings.add(new Quantity(node, "neutral, third harmonic over fundamental", byFundamental, "A")
                .atMost(capacity, BY_FUNDAMENTAL));
        findings.add(
                new Quantity(node, "neutral, third harmonic over line current", byLine, "A").atMost(capacity, BY_LINE));
        findings.add(new Quantity(node, "neutral at idle", atIdle, "A"));
        findings.add(new Quantity(node, "load of a 100 % neutral", 100 * byFundamental / full, "%"));
        findings.add(new Quantity(node, "load of a 200 % neutral", 50 * byFundamental / full, "%"));
        if (byLine > capacity && byFundamental <= capacity) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("over-if-part-of-line")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .place(node)
                    .figure(byLine)
                    .limit(capacity)
                    .unit("A")
                    .clause(BY_LINE)
                    .message("the neutral of " + fed.label() + " carries " + HUNDREDTHS.amps(byLine, capacity)
                            + " where third_harmonic is read as a part of the line current, allowed are "
                            + HUNDREDTHS.amps(capacity, byLine) + " (" + HUNDREDTHS.amps(byFundamental)
                            + " where it is a part of the fundamental)")
                    .cure("ask which of the two the datasheets mean," + " or take a neutral of 200 %")
                    .build());
        }
        if (byFundamental > line * (1 + LAST_BITS) && fed.limits().neutralFactor() < 2) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("more-than-a-line")
                    .grade(Grade.NOTE)
                    .place(node)
                    .figure(byFundamental)
                    .limit(line)
                    .unit("A")
                    .clause("NEC 310.15(E), IEC 60364-5-52 clause 523.6 (clauses from memory)")
                    .message("the neutral of " + fed.label() + " carries " + HUNDREDTHS.amps(byFundamental, line)
                            + ", more than any line (" + HUNDREDTHS.amps(line, byFundamental)
                            + "): it counts as a current-carrying conductor")
                    .cure("offer a neutral of 200 %")
                    .build());
        }
        if (byFundamental > TriplenNeutral.RECTIFIER_CEILING_RATIO * line) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("beyond-rectifiers")
                    .grade(Grade.NOTE)
                    .place(node)
                    .figure(byFundamental / line)
                    .limit(TriplenNeutral.RECTIFIER_CEILING_RATIO)
                    .unit("")
                    .clause("")
                    .message("the neutral of " + fed.label()
                            + " would carry more than √3 times its greatest line current (" + HUNDREDTHS.amps(line)
                            + "), which rectifiers cannot reach")
                    .cure("a third_harmonic is too high")
                    .build());
        }
    }
}
