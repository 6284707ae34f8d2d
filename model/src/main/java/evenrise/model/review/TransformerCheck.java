package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.electrical.LineSums;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Phase;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Transformers: what they carry in any scene against their rating, the harmonics of that against their K-factor, the device
 * before them against what they draw when they are energised, and by NEC their protection.
 */
final class TransformerCheck implements ElectricalCheck {
    static final String ID = "transformer";
    private static final String NAMEPLATE = "rating by its nameplate";
    private static final String K_FACTOR = "UL 1561, IEEE C57.110 (from memory)";
    private static final double LAST_BITS = 1e-9;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<String> bareRating = new ArrayList<>();
        List<String> bareDevice = new ArrayList<>();
        List<String> bareInrush = new ArrayList<>();
        List<String> bareFactor = new ArrayList<>();
        List<String> harmonics = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            if (point.transformer().isEmpty()) {
                continue;
            }
            Optional<RatedTransformer> rated = RatedTransformer.of(point);
            if (rated.isEmpty()) {
                bareRating.add(point.id());
            } else {
                findings.made(ID, point.id());
                load(layout, rated.get(), findings);
                if (factor(layout, rated.get(), findings)) {
                    bareFactor.add(point.id());
                }
            }
            if (hasLoads(layout, point)) {
                harmonics.add(point.id());
            }
            energising(layout, point, bareInrush, bareDevice, findings);
        }
        findings.notChecked(ID, bareRating, "transformer.rated_kva");
        findings.notChecked(ID, bareFactor, "transformer.k_factor; 1 was taken, an ordinary transformer");
        findings.notChecked(
                ID,
                harmonics,
                "harmonics above the third: a K-factor of the third alone is less than that of the whole spectrum");
        findings.notChecked(ID, bareInrush, "transformer.inrush_peak_a");
        findings.notChecked(ID, bareDevice, "the instantaneous range or curve of the feeder.device before it");
        TransformerProtectionReview.review(layout, findings);
    }

    private static boolean hasLoads(Layout layout, Point point) {
        return !layout.nodeLoads().seen(point.index()).isEmpty();
    }

    /** The fullest line in the worst scene; a winding is as full as its line. */
    private static void load(Layout layout, RatedTransformer it, Remarks findings) {
        Point point = it.point();
        double line = layout.sceneUses().stream()
                .flatMap(use -> use.running(point).byPhase().values().stream())
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        double kva = layout.sceneUses().stream()
                .mapToDouble(use -> use.metered(point).values().stream()
                                .mapToDouble(Double::doubleValue)
                                .sum()
                        * point.lineToNeutralVolts()
                        / 1000)
                .max()
                .orElse(0);
        double percent = 100 * line / it.secondaryAmps();
        findings.add(new Quantity(point.id(), "load of the transformer", kva, "kVA"));
        findings.add(new Quantity(point.id(), "rated current of its secondary", it.secondaryAmps(), "A"));
        findings.add(new Quantity(point.id(), "rated current of its primary", it.primaryAmps(), "A"));
        findings.add(new Quantity(point.id(), "load of its fullest line", percent, "%").atMost(100, NAMEPLATE));
        if (line > it.secondaryAmps() + LAST_BITS) {
            findings.add(Remark.inAmps(ID, point.id(), line, it.secondaryAmps())
                    .kind("over-nameplate")
                    .grade(Grade.BREAKS)
                    .clause(NAMEPLATE)
                    .message("the transformer of " + point.label() + " runs at "
                            + HUNDREDTHS.amps(line, it.secondaryAmps())
                            + " on its fullest line in the worst scene, it is rated "
                            + HUNDREDTHS.amps(it.secondaryAmps(), line) + " (" + THOUSANDTHS.in("kVA", it.kva())
                            + ")")
                    .cure("balance its lines, move loads, or take a larger one")
                    .build());
        }
    }

    /**
     * Σ h²·(I_h/I_rated)² of the worst line and scene, the fundamental by phasors and the third harmonic as a number (UL 1561;
     * IEEE C57.110), held against what it is built for.
     *
     * @return whether it states no K-factor and would need one
     */
    private static boolean factor(Layout layout, RatedTransformer it, Remarks findings) {
        Point point = it.point();
        double loading = 0;
        double shape = 1;
        for (UseCurrents use : layout.sceneUses()) {
            LineSums sums = use.sums(point);
            for (Phase phase : point.system().phases()) {
                double third = sums.thirdAmps(phase);
                double rms = sums.meteredAmps(phase);
                double squares = rms * rms + 8 * third * third;
                loading = Math.max(loading, squares / (it.secondaryAmps() * it.secondaryAmps()));
                shape = Math.max(shape, rms > 0 ? squares / (rms * rms) : 1);
            }
        }
        double built = it.transformer().kFactor().orElse(1);
        String how = "third harmonics alone, which is less than the whole spectrum gives";
        findings.add(new Quantity(point.id(), "K-factor of its load, over rated current", loading, "", Optional.of(how))
                .atMost(shape > 1 + LAST_BITS ? built : Double.POSITIVE_INFINITY, K_FACTOR));
        findings.add(
                new Quantity(point.id(), "K-factor of its load, over its own current", shape, "", Optional.of(how)));
        if (loading > built + LAST_BITS && shape > 1 + LAST_BITS) {
            findings.add(Remark.builder()
                    .check(ID)
                    .place(point.id())
                    .figure(loading)
                    .limit(built)
                    .kind("over-k-factor")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .clause(K_FACTOR)
                    .message("the harmonics of what " + point.label() + " feeds make a K-factor of "
                            + HUNDREDTHS.number(loading, built)
                            + " over its rated current, by their third harmonics alone; its"
                            + " transformer is built for " + HUNDREDTHS.number(built, loading))
                    .cure("take one for a higher K-factor, a larger one, or spread the load")
                    .build());
        }
        return it.transformer().kFactor().isEmpty() && shape > 1 + LAST_BITS;
    }

    /** As at a branch breaker, rms over a half-cycle; with nothing else on the same device. */
    private static void energising(
            Layout layout, Point point, List<String> bareInrush, List<String> bareDevice, Remarks findings) {
        OptionalDouble peak =
                point.node().orElseThrow().transformer().orElseThrow().inrushPeakAmps();
        if (peak.isEmpty()) {
            bareInrush.add(point.id());
            return;
        }
        double half = point.node()
                .orElseThrow()
                .transformer()
                .orElseThrow()
                .inrushHalfMillis()
                .orElse(Double.POSITIVE_INFINITY);
        double counts = Double.isInfinite(half)
                ? TripEquivalent.sineAmps(peak.getAsDouble())
                : TripEquivalent.pulseAmps(
                        peak.getAsDouble(),
                        half / 1000,
                        layout.project().supply().frequencyHertz());
        Devices.Rated device = Devices.ofFeeder(point);
        Quantity inrush = new Quantity(point.id(), "energising inrush at the trip", counts, "A");
        findings.add(
                device.band().isEmpty() ? inrush : inrush.atMost(device.holdsAmps(), "range of the device before it"));
        if (device.band().isEmpty()) {
            bareDevice.add(point.id());
            return;
        }
        findings.made(ID, point.id());
        if (counts > device.holdsAmps() + LAST_BITS) {
            boolean surely = counts > device.tripsAmps() + LAST_BITS;
            findings.add(Remark.inAmps(ID, point.id(), counts, surely ? device.tripsAmps() : device.holdsAmps())
                    .kind("trips-when-energised")
                    .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                    .message(device.text() + "; its transformer draws a peak of " + HUNDREDTHS.amps(peak.getAsDouble())
                            + " when it is energised at the worst moment, at most "
                            + HUNDREDTHS.amps(counts, surely ? device.tripsAmps() : device.holdsAmps())
                            + " rms over a half-cycle: it " + (surely ? "trips" : "may trip"))
                    .cure("take a later range" + protectionRoom(layout, point) + ", or a transformer with less inrush")
                    .build());
        }
    }

    private static String protectionRoom(Layout layout, Point point) {
        boolean isNec = layout.project().electrical().flatMap(Electrical::practice).stream()
                .anyMatch(Practice.NEC::equals);
        return isNec && RatedTransformer.of(point).isPresent()
                ? " or a device of up to 250 % with protection on the secondary (450.3(B))"
                : "";
    }
}
