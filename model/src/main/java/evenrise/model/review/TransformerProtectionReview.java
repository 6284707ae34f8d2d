package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.electrical.breaker.TapConductor;
import evenrise.model.electrical.breaker.TransformerProtection;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Device;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Protection of transformers by NEC: the devices beside them by table 450.3(B), their secondary conductors by 240.21(C), with
 * 240.4(F) for secondaries of two wires. IEC practice leaves both to the designer: the conductor checks are made there, no
 * table.
 */
final class TransformerProtectionReview {
    private static final int MOST_DEVICES = 6;
    private static final String BEHIND = "NEC 240.21(C), 240.4(B)";
    private static final String UP_TO_10_FEET = "NEC 240.21(C)(2)";
    private static final String UP_TO_25_FEET = "NEC 240.21(C)(6)";
    private static final double LAST_BITS = 1e-9;

    private final Layout layout;
    private final Remarks findings;
    private final List<String> barePrimary = new ArrayList<>();
    private final List<String> bareSecondary = new ArrayList<>();
    private final List<String> bareCable = new ArrayList<>();

    /** Devices on the secondary: how many, and their ratings together. */
    private record Secondary(int count, double amps) {}

    private TransformerProtectionReview(Layout layout, Remarks findings) {
        this.layout = layout;
        this.findings = findings;
    }

    static void review(Layout layout, Remarks findings) {
        Optional<Practice> practice = layout.project().electrical().flatMap(Electrical::practice);
        List<Point> transformers = layout.distribution().points().stream()
                .filter(point -> point.transformer().isPresent())
                .toList();
        if (transformers.isEmpty()) {
            return;
        }
        if (!practice.equals(Optional.of(Practice.NEC))) {
            findings.notChecked(
                    TransformerCheck.ID,
                    transformers.stream().map(Point::id).toList(),
                    "electrical.practice nec, whose tables say how transformers and their secondary conductors are"
                            + " protected");
            return;
        }
        TransformerProtectionReview review = new TransformerProtectionReview(layout, findings);
        transformers.forEach(point -> RatedTransformer.of(point).ifPresent(review::one));
        findings.notChecked(TransformerCheck.ID, review.barePrimary, "feeder.breaker_a, the device before it");
        findings.notChecked(
                TransformerCheck.ID,
                review.bareSecondary,
                "main of the transformer, or feeder.breaker_a of what it feeds: the device behind it");
        findings.notChecked(TransformerCheck.ID, review.bareCable, "transformer.secondary_cable");
    }

    private void one(RatedTransformer it) {
        OptionalDouble primary = primary(it.point());
        if (primary.isEmpty()) {
            barePrimary.add(it.point().id());
            return;
        }
        Optional<Secondary> secondary = secondary(it.point());
        devices(it, primary.getAsDouble(), secondary);
        Optional<Cable> cable = it.transformer().secondaryCable();
        if (cable.isEmpty()) {
            bareCable.add(it.point().id());
        } else {
            conductors(it, cable.get(), primary.getAsDouble(), secondary);
        }
    }

    private static OptionalDouble primary(Point point) {
        OptionalDouble device =
                point.feeder().flatMap(Feeder::device).map(Device::ratedAmps).orElse(OptionalDouble.empty());
        return device.isPresent()
                ? device
                : point.feeder().map(Feeder::breakerAmps).orElse(OptionalDouble.empty());
    }

    /** Its main, else the devices of all that it feeds at its voltage, where each is stated. */
    private Optional<Secondary> secondary(Point point) {
        if (point.main().isPresent()) {
            return Optional.of(
                    new Secondary(1, Devices.ofMain(point).orElseThrow().ratedAmps()));
        }
        List<Point> fed = layout.distribution().points().stream()
                .filter(each -> each.parent() == point.index())
                .toList();
        double sum = 0;
        for (Point each : fed) {
            OptionalDouble device = primary(each);
            if (device.isEmpty()
                    && (each.transformer().isPresent() || each.main().isEmpty())) {
                return Optional.empty();
            }
            sum += device.orElseGet(() -> Devices.ofMain(each).orElseThrow().ratedAmps());
        }
        return fed.isEmpty() ? Optional.empty() : Optional.of(new Secondary(fed.size(), sum));
    }

    private void devices(RatedTransformer it, double primary, Optional<Secondary> secondary) {
        double alone = TransformerProtection.primaryAloneAmps(it.primaryAmps());
        double beside = TransformerProtection.primaryAmps(it.primaryAmps());
        double behind = TransformerProtection.secondaryAmps(it.secondaryAmps());
        findings.add(new Quantity(it.point().id(), "largest primary device alone", alone, "A"));
        findings.add(new Quantity(it.point().id(), "largest primary device beside one on the secondary", beside, "A"));
        findings.add(new Quantity(it.point().id(), "largest device on the secondary", behind, "A"));
        boolean isAlone = secondary.isEmpty()
                || secondary.get().amps() > behind + LAST_BITS
                || secondary.get().count() > MOST_DEVICES;
        findings.add(new Quantity(it.point().id(), "rating of the device before it", primary, "A")
                .atMost(
                        secondary.isEmpty() && primary > alone ? Double.POSITIVE_INFINITY : isAlone ? alone : beside,
                        "NEC table 450.3(B)"));
        if (primary <= alone + LAST_BITS) {
            return;
        }
        String what = "the transformer of " + it.point().label() + " (" + THOUSANDTHS.in("kVA", it.kva()) + ", "
                + HUNDREDTHS.amps(it.primaryAmps()) + " and " + HUNDREDTHS.amps(it.secondaryAmps())
                + ") has a primary device of "
                + HUNDREDTHS.amps(primary);
        if (primary > beside + LAST_BITS) {
            breaks(
                    "primary-device-too-large",
                    it,
                    primary,
                    beside,
                    what + ", allowed are 250 %, " + HUNDREDTHS.amps(beside, primary)
                            + ", with a device on the secondary, and " + HUNDREDTHS.amps(alone)
                            + " without",
                    "take a smaller device");
        } else if (secondary.isEmpty()) {
            bareSecondary.add(it.point().id());
        } else if (secondary.get().amps() > behind + LAST_BITS
                || secondary.get().count() > MOST_DEVICES) {
            breaks(
                    "devices-too-large",
                    it,
                    secondary.get().amps(),
                    behind,
                    what + ", more than the " + HUNDREDTHS.amps(alone) + " that protect it alone, and "
                            + (secondary.get().count() == 1
                                    ? "one device"
                                    : secondary.get().count() + " devices")
                            + " on the secondary of "
                            + HUNDREDTHS.amps(secondary.get().amps(), behind)
                            + " in all, allowed are up to six of "
                            + HUNDREDTHS.amps(behind, secondary.get().amps()),
                    "take a smaller device on either side");
        }
    }

    private void conductors(RatedTransformer it, Cable cable, double primary, Optional<Secondary> secondary) {
        Point point = it.point();
        double line = layout.fullUse().running(point).byPhase().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        double end = secondary.map(Secondary::amps).orElse(point.ratedAmps());
        CableRun run = CableRun.of(layout.project(), cable, end).orElseThrow();
        int lines = Math.max(2, point.system().phases().size());
        Optional<Carrying> carrying = run.carrying(Math.min(3, lines), lines);
        if (carrying.isEmpty()) {
            findings.notChecked(
                    TransformerCheck.ID,
                    List.of(point.id()),
                    "a verified table for the size, metal, temperature and method of transformer.secondary_cable");
            return;
        }
        double carries = carrying.get().amps();
        String what = "the secondary conductors of " + point.label() + " (" + run.text() + ") carry "
                + HUNDREDTHS.amps(carries) + " (" + carrying.get().text() + ")";
        findings.add(new Quantity(point.id(), "ampacity of its secondary conductors", carries, "A")
                .atLeast(line, "NEC 215.2(A)"));
        double seen = primary / RatedTransformer.primaryOverSecondary(point);
        if (line > carries + LAST_BITS) {
            conductor(
                    "secondary-cable-too-small",
                    point,
                    line,
                    carries,
                    "NEC 215.2(A)",
                    what + ", all that is connected needs " + HUNDREDTHS.amps(line),
                    "take a larger size");
        }
        if (it.isTwoWire() && seen <= carries + LAST_BITS) {
            return;
        }
        if (secondary.isEmpty()) {
            bareSecondary.add(point.id());
            return;
        }
        findings.add(new Quantity(point.id(), "rating that its secondary conductors end in", end, "A")
                .atMost(carries, BEHIND));
        if (end > carries + LAST_BITS) {
            conductor(
                    "secondary-cable-below-device",
                    point,
                    end,
                    carries,
                    BEHIND,
                    what + ", and end in " + HUNDREDTHS.amps(end, carries)
                            + " of devices; the next size up is not allowed behind a transformer",
                    "take a larger size or a smaller device");
            return;
        }
        double metres = cable.lengthMetres();
        double needed = TransformerProtection.conductorAmps(seen, metres);
        findings.add(new Quantity(point.id(), "length of its secondary conductors", metres, "m")
                .atMost(TapConductor.LONG_METRES, UP_TO_25_FEET));
        if (metres <= TapConductor.LONG_METRES + LAST_BITS) {
            findings.add(new Quantity(point.id(), "least ampacity of its secondary conductors", needed, "A")
                    .atMost(carries, metres <= TapConductor.SHORT_METRES ? UP_TO_10_FEET : UP_TO_25_FEET));
        }
        if (metres > TapConductor.LONG_METRES + LAST_BITS) {
            findings.add(Remark.builder()
                    .check(TransformerCheck.ID)
                    .place(point.id())
                    .figure(metres)
                    .limit(TapConductor.LONG_METRES)
                    .unit("m")
                    .kind("long-secondary")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .clause(UP_TO_25_FEET)
                    .message(String.format(
                            Locale.ROOT,
                            "the secondary conductors of %s are %.1f m long, without a device at their beginning at"
                                    + " most %.1f m are allowed indoors (25 ft)",
                            point.label(),
                            metres,
                            TapConductor.LONG_METRES))
                    .cure("put a device at the transformer")
                    .build());
        } else if (needed > carries + LAST_BITS) {
            conductor(
                    "secondary-cable-unprotected",
                    point,
                    needed,
                    carries,
                    metres <= TapConductor.SHORT_METRES ? UP_TO_10_FEET : UP_TO_25_FEET,
                    what + ", at this length they need "
                            + (metres <= TapConductor.SHORT_METRES ? "a tenth" : "a third") + " of the "
                            + HUNDREDTHS.amps(seen) + " that the primary device lets through, "
                            + HUNDREDTHS.amps(needed, carries),
                    "take a larger size or a smaller primary device");
        } else if (metres > TapConductor.SHORT_METRES + LAST_BITS
                && secondary.get().count() > 1) {
            findings.add(Remark.builder()
                    .check(TransformerCheck.ID)
                    .place(point.id())
                    .figure(secondary.get().count())
                    .limit(1)
                    .kind("several-devices")
                    .grade(Grade.BREAKS)
                    .clause(UP_TO_25_FEET)
                    .message(what + ", and end in " + secondary.get().count()
                            + " devices; conductors of more than 10 ft end in one")
                    .cure("put a main before them")
                    .build());
        }
    }

    private void breaks(String kind, RatedTransformer it, double figure, double limit, String message, String cure) {
        findings.add(Remark.inAmps(TransformerCheck.ID, it.point().id(), figure, limit)
                .kind(kind)
                .grade(Grade.BREAKS)
                .clause("NEC table 450.3(B)")
                .message(message)
                .cure(cure)
                .build());
    }

    private void conductor(
            String kind, Point point, double figure, double limit, String clause, String message, String cure) {
        findings.add(Remark.inAmps(TransformerCheck.ID, point.id(), figure, limit)
                .kind(kind)
                .grade(Grade.BREAKS)
                .clause(clause)
                .message(message)
                .cure(cure)
                .build());
    }
}
