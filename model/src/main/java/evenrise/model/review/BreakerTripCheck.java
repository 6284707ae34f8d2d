package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Circuit;
import evenrise.model.project.Load;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whether a load's own inrush trips its own breaker at once. */
final class BreakerTripCheck implements ElectricalCheck {
    private static final String ID = "breaker-trip";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        double frequency = layout.project().supply().frequencyHertz();
        Advice advice = new Advice(layout, FaultLoops.of(layout.project()));
        List<String> unknown = new ArrayList<>();
        List<String> withoutInrush = new ArrayList<>();
        for (Load load : layout.project().loads()) {
            Optional<InstantaneousBand> band = Devices.ofBranch(load).band();
            if (band.isEmpty()) {
                unknown.add(load.id());
            } else if (load.inrushPeakAmps().isEmpty()) {
                withoutInrush.add(load.id());
            } else {
                findings.made(ID, load.id());
                review(load, band.get(), frequency, advice, findings);
            }
        }
        findings.notChecked(ID, unknown, "curve, or circuit.instantaneous or instantaneous_ratio");
        findings.notChecked(ID, withoutInrush, "inrush_peak_a");
    }

    private static void review(Load load, InstantaneousBand band, double frequency, Advice advice, Remarks findings) {
        double half = load.inrushHalfMillis() / 1000;
        double counts = TripEquivalent.inrushAmps(load.idleAmps(), load.inrushAmps(), half, frequency);
        double holds = band.leastRatio() * load.breakerAmps();
        double trips = band.mostRatio() * load.breakerAmps();
        findings.add(new Quantity(
                load.id(), "inrush at the trip, as a sine", TripEquivalent.sineAmps(load.inrushAmps()), "A"));
        findings.add(new Quantity(load.id(), "inrush at the trip, as a pulse", counts, "A")
                .atMost(holds, clause(load).isEmpty() ? "range that the maker states" : clause(load)));
        if (counts <= holds) {
            return;
        }
        boolean surely = counts > trips;
        findings.add(Remark.builder()
                .check(ID)
                .kind("trips-at-switch-on")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(load.id())
                .figure(counts)
                .limit(surely ? trips : holds)
                .unit("A")
                .clause(clause(load))
                .message("load " + Phrase.quoted(load.id()) + " peaks at " + HUNDREDTHS.amps(load.inrushAmps())
                        + ", which counts for " + HUNDREDTHS.amps(counts, surely ? trips : holds)
                        + " rms over a half-cycle; its breaker of "
                        + HUNDREDTHS.amps(load.breakerAmps()) + " holds up to " + HUNDREDTHS.amps(holds, counts)
                        + " and trips at once above "
                        + HUNDREDTHS.amps(trips, counts) + ": it " + (surely ? "trips" : "may trip") + " at switch-on")
                .cure(cure(load, counts, holds, advice))
                .build());
    }

    private static String clause(Load load) {
        if (load.circuit().flatMap(Circuit::instantaneous).isPresent()) {
            return "";
        }
        boolean isAdjustable = load.circuit()
                .map(Circuit::instantaneousRatio)
                .orElse(OptionalDouble.empty())
                .isPresent();
        return isAdjustable ? "NEMA AB 4 (from memory)" : "IEC 60898-1 clause 5.3.5 (clause from memory)";
    }

    private static String cure(Load load, double counts, double holds, Advice advice) {
        int devices = load.circuit().map(Circuit::devices).orElse(1);
        if (devices > 1) {
            int fit = (int) Math.floor(devices * holds / counts);
            return String.format(Locale.ROOT, "put at most %d of its %d devices on one breaker", fit, devices);
        }
        return advice.later(load, counts);
    }

    /** A band that trips later is proposed only together with what the fault loop says of it. */
    private record Advice(Layout layout, Optional<FaultLoops> loops) {
        String later(Load load, double counts) {
            Optional<Point> panel =
                    layout.placement(load.id()).flatMap(Placement::panel).map(layout.distribution()::of);
            if (panel.isEmpty()) {
                return "take a device that limits its inrush";
            }
            String needs = loops.isEmpty()
                    ? FaultLoops.needs(layout.project())
                    : !loops.get().knowsOriginOf(panel.get())
                            ? loops.get().needs(panel.get())
                            : (FaultLoops.isKnown(panel.get()) ? "circuit" : "feeder")
                                    + ".cable and its protective_size";
            return FaultCure.later(
                    TrippingDevice.ofBranch(load, panel.get()),
                    loops.flatMap(known -> known.ofBranch(load, panel.get())),
                    counts,
                    needs);
        }
    }
}
