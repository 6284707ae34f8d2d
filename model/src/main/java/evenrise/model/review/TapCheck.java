package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.breaker.TapConductor;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.FeederTap;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Feeder taps by NEC 240.21(B)(1) and (2): conductors that begin without a device are short, carry enough of what the device
 * before them lets through, and end in a device that they carry. No next size up (240.21).
 */
final class TapCheck implements ElectricalCheck {
    static final String ID = "tap";
    private static final String TOO_LONG = "NEC 240.21(B)(2)";
    private static final double LAST_BITS = 1e-9;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Point> taps =
                layout.distribution().points().stream().filter(Feeders::isTap).toList();
        if (taps.isEmpty()) {
            return;
        }
        List<String> ids = taps.stream().map(Point::id).toList();
        if (!layout.project().electrical().flatMap(Electrical::practice).equals(Optional.of(Practice.NEC))) {
            findings.notChecked(ID, ids, "electrical.practice nec, whose rules of taps alone are known here");
            return;
        }
        findings.notChecked(
                ID,
                taps.stream()
                        .filter(point -> point.transformer().isPresent())
                        .map(Point::id)
                        .toList(),
                "240.21(B)(3): a tap that supplies a transformer is limited together with its secondary conductors");
        Lacking lacking = new Lacking();
        taps.stream()
                .filter(point -> point.transformer().isEmpty())
                .forEach(point -> one(layout, point, lacking, findings));
        lacking.tell(findings);
    }

    /** What taps do not state. */
    private static final class Lacking {
        final List<String> before = new ArrayList<>();
        final List<String> cable = new ArrayList<>();
        final List<String> table = new ArrayList<>();
        final List<String> end = new ArrayList<>();
        final List<String> raceway = new ArrayList<>();

        void tell(Remarks findings) {
            findings.notChecked(ID, before, "the device before the tap: main or feeder.breaker_a of what feeds it");
            findings.notChecked(ID, cable, "feeder.cable");
            findings.notChecked(
                    ID, table, "a verified table for the size, metal, temperature and method of feeder.cable");
            findings.notChecked(ID, end, "main, the one device in which a tap of more than 10 ft ends");
            findings.notChecked(ID, raceway, "feeder.tap.in_raceway");
        }
    }

    private static void one(Layout layout, Point point, Lacking lacking, Remarks findings) {
        Point above = layout.distribution().points().get(point.parent());
        if (Feeders.isTap(above) && above.main().isEmpty()) {
            findings.add(remark(point, "tap-of-a-tap", "NEC 240.21")
                    .message("the feeder of " + point.label() + " taps that of " + above.label()
                            + ", which is a tap itself and ends in no main that is stated; a tap may not be tapped")
                    .cure("state or put a main at " + above.label() + ", or take the tap from the feeder before it")
                    .build());
            return;
        }
        Optional<Cable> cable = point.feeder().flatMap(Feeder::cable);
        FeederTap tap = point.feeder().flatMap(Feeder::tap).orElseThrow();
        protectedFromDamage(point, tap, lacking, findings);
        if (cable.isEmpty()) {
            lacking.cable.add(point.id());
            return;
        }
        double metres = cable.get().lengthMetres();
        findings.add(
                new Quantity(point.id(), "length of its tap", metres, "m").atMost(TapConductor.LONG_METRES, TOO_LONG));
        if (metres > TapConductor.LONG_METRES + LAST_BITS) {
            tooLong(point, metres, findings);
            return;
        }
        Duty duty = ConductorCheck.feeder(layout, point);
        CableRun run =
                CableRun.of(layout.project(), cable.get(), duty.breakerAmps()).orElseThrow();
        Optional<Carrying> carrying = Sizing.carrying(run, duty);
        if (carrying.isEmpty()) {
            lacking.table.add(point.id());
            return;
        }
        double carries = carrying.get().amps();
        String what = "the tap to " + point.label() + " (" + run.text() + ") carries " + HUNDREDTHS.amps(carries) + " ("
                + carrying.get().text() + ")";
        end(point, metres, what, carries, lacking, findings);
        OptionalDouble before = before(layout, above);
        if (before.isEmpty()) {
            lacking.before.add(point.id());
        } else {
            beginning(point, tap, metres, what, carries, before.getAsDouble(), findings);
        }
    }

    private static void protectedFromDamage(Point point, FeederTap tap, Lacking lacking, Remarks findings) {
        if (tap.inRaceway().isEmpty()) {
            lacking.raceway.add(point.id());
        } else if (!tap.inRaceway().get()) {
            findings.add(remark(point, "tap-in-the-open", "NEC 240.21(B)")
                    .message("the tap to " + point.label() + " is neither in a raceway nor otherwise protected from"
                            + " damage")
                    .cure("lay it in a raceway from the tap to the device that it ends in")
                    .build());
        }
    }

    private static void tooLong(Point point, double metres, Remarks findings) {
        findings.made(ID, point.id());
        findings.add(remark(point, "tap-too-long", TOO_LONG)
                .figure(metres)
                .limit(TapConductor.LONG_METRES)
                .unit("m")
                .message("the tap to " + point.label() + " is "
                        + Decimals.apart(metres, TapConductor.LONG_METRES, 1) + " m long, allowed are "
                        + Decimals.apart(TapConductor.LONG_METRES, metres, 1)
                        + " m (25 ft); what holds in high bays and outdoors is not looked at")
                .cure("put a device where it begins, or bring the panel nearer")
                .build());
    }

    /** The device that it ends in; up to 10 feet what it feeds may have several, and then its rating counts. */
    private static void end(
            Point point, double metres, String what, double carries, Lacking lacking, Remarks findings) {
        if (point.main().isEmpty() && !TapConductor.isShort(metres)) {
            lacking.end.add(point.id());
            return;
        }
        double end = Devices.ofMain(point).map(Devices.Rated::ratedAmps).orElse(point.ratedAmps());
        findings.made(ID, point.id());
        findings.add(new Quantity(point.id(), "rating that its tap ends in", end, "A").atMost(carries, clause(metres)));
        if (end > carries + LAST_BITS) {
            findings.add(remark(point, "tap-below-its-end", clause(metres))
                    .figure(end)
                    .limit(carries)
                    .unit("A")
                    .message(what + ", and ends in "
                            + (point.main().isPresent() ? "a main of " : "gear without a main, rated ")
                            + HUNDREDTHS.amps(end, carries) + "; the next size up is not allowed of taps")
                    .cure("take a larger size, or a smaller main")
                    .build());
        }
    }

    private static void beginning(
            Point point, FeederTap tap, double metres, String what, double carries, double before, Remarks findings) {
        boolean isShort = TapConductor.isShort(metres);
        if (isShort && !tap.leavesEnclosure()) {
            return;
        }
        double needed = TapConductor.leastAmps(before, metres);
        findings.add(
                new Quantity(point.id(), "least ampacity of its tap", needed, "A").atMost(carries, clause(metres)));
        if (needed > carries + LAST_BITS) {
            findings.add(remark(point, "tap-below-its-beginning", clause(metres))
                    .figure(needed)
                    .limit(carries)
                    .unit("A")
                    .message(what + ", at this length it needs " + (isShort ? "a tenth" : "a third") + " of the "
                            + HUNDREDTHS.amps(before) + " of the device before it, "
                            + HUNDREDTHS.amps(needed, carries))
                    .cure("take a larger size, or a smaller device before it")
                    .build());
        }
    }

    private static String clause(double metres) {
        return TapConductor.isShort(metres) ? "NEC 240.21(B)(1)" : "NEC 240.21(B)(2)";
    }

    /** Of what protects the conductors that are tapped; empty where it is not stated. */
    private static OptionalDouble before(Layout layout, Point above) {
        if (above.isSupply()) {
            return layout.project().supply().main().isPresent()
                    ? OptionalDouble.of(
                            Devices.ofSupply(layout.project().supply()).ratedAmps())
                    : OptionalDouble.empty();
        }
        if (above.main().isPresent()) {
            return OptionalDouble.of(Devices.ofMain(above).orElseThrow().ratedAmps());
        }
        boolean hasDevice = above.transformer().isEmpty()
                && above.feeder()
                        .filter(feeder -> feeder.breakerAmps().isPresent()
                                || feeder.device().isPresent())
                        .isPresent();
        return hasDevice ? OptionalDouble.of(Devices.ofFeeder(above).ratedAmps()) : OptionalDouble.empty();
    }

    private static evenrise.model.plan.RemarkBuilder remark(Point point, String kind, String clause) {
        return Remark.builder()
                .check(ID)
                .kind(kind)
                .grade(Grade.BREAKS)
                .place(point.id())
                .clause(clause);
    }
}
