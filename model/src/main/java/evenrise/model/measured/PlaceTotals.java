package evenrise.model.measured;

import evenrise.model.contract.Figures;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Rotation;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Whole panels, nodes and the supply as measured, beside their limits and beside what their loads come to. */
final class PlaceTotals {
    /** At 500 V direct, circuits up to 500 V (IEC 60364-6 table 6.1, from memory). */
    static final double LEAST_MEGOHMS = 1;

    private final Layout layout;
    private final SiteReadings readings;
    private final UseCurrents idle;
    private final List<NodeLimits> limits;
    private final List<Discrepancy> found = new ArrayList<>();

    private PlaceTotals(Layout layout, SiteReadings readings) {
        this.layout = layout;
        this.readings = readings;
        this.idle = UseCurrents.of(layout, load -> load.idleAmps());
        this.limits = NodeLimits.of(layout.project());
    }

    static List<Discrepancy> of(Layout layout, SiteReadings readings) {
        PlaceTotals it = new PlaceTotals(layout, readings);
        for (PlaceReading each : readings.places()) {
            layout.distribution().point(each.place()).ifPresent(point -> it.look(point, each));
        }
        return it.found;
    }

    private void look(Point point, PlaceReading reading) {
        NodeLimits limit = limits.get(point.index());
        reading.volts().forEach((phase, volts) -> voltage(point, reading, phase, volts));
        reading.idleAmps().forEach((phase, amps) -> total(point, reading, phase, amps));
        reading.runningAmps()
                .forEach((phase, amps) -> within(
                        reading,
                        phase,
                        MeasuredQuantity.RUNNING,
                        amps,
                        limit.continuousAmps(),
                        "its continuous rating"));
        limit.inrushLimitAmps()
                .ifPresent(most -> reading.peakAmps()
                        .forEach((phase, amps) ->
                                within(reading, phase, MeasuredQuantity.PEAK, amps, most, "its inrush limit")));
        reading.neutralAmps()
                .ifPresent(amps -> within(
                        reading,
                        null,
                        MeasuredQuantity.NEUTRAL,
                        amps,
                        limit.neutralAmps(),
                        "what its neutral may carry"));
        reading.isRotationRight().filter(right -> !right).ifPresent(wrong -> rotation(point, reading));
        if (reading.insulationMegohms().orElse(LEAST_MEGOHMS) < LEAST_MEGOHMS) {
            add(
                    Weight.UNSAFE,
                    reading,
                    null,
                    MeasuredQuantity.INSULATION,
                    OptionalDouble.of(LEAST_MEGOHMS),
                    reading.insulationMegohms(),
                    0,
                    "less than 1 MΩ (IEC 60364-6 table 6.1, from memory)",
                    "circuit by circuit, electronics disconnected; do not switch it on");
        }
    }

    private void within(
            PlaceReading reading, Phase phase, MeasuredQuantity quantity, double amps, double most, String what) {
        double error = reading.visit().meter().errorAmps(amps);
        if (amps + error > most) {
            add(
                    Weight.UNSAFE,
                    reading,
                    phase,
                    quantity,
                    OptionalDouble.of(most),
                    OptionalDouble.of(amps),
                    error,
                    amps > most ? "over " + what : "within what the meter may be off by, " + what + " is passed",
                    quantity == MeasuredQuantity.PEAK
                            ? "what comes on then; a rework spreads it"
                            : "what is in use; take load off before it is used so again");
        }
    }

    private void voltage(Point point, PlaceReading reading, Phase phase, double volts) {
        SupplyVoltage allowed = SupplyVoltage.of(layout.project());
        double nominal = point.lineToNeutralVolts();
        double least = allowed.band().leastRatio() * nominal;
        double most = allowed.band().mostRatio() * nominal;
        if (volts >= least && volts <= most) {
            return;
        }
        // A lost neutral lets the voltages of phases wander apart.
        boolean isUnsafe = volts > most;
        add(
                isUnsafe ? Weight.UNSAFE : Weight.DIFFERS,
                reading,
                phase,
                MeasuredQuantity.VOLTAGE,
                OptionalDouble.of(volts > most ? most : least),
                OptionalDouble.of(volts),
                0,
                "outside " + Figures.TENTHS.in("V", least) + " to " + Figures.TENTHS.in("V", most) + " ("
                        + allowed.from() + ")",
                isUnsafe ? "the neutral first; then the taps of what feeds it" : "what feeds it, and its voltage drop");
    }

    private void rotation(Point point, PlaceReading reading) {
        List<String> motors = layout.nodeLoads().seen(point.index()).stream()
                .map(NodeLoads.Seen::placement)
                .filter(each -> Rotation.matters(each.load()))
                .map(Placement::id)
                .distinct()
                .toList();
        add(
                motors.isEmpty() ? Weight.FAULT : Weight.UNSAFE,
                reading,
                null,
                MeasuredQuantity.ROTATION,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                0,
                motors.isEmpty()
                        ? "phases in another order than planned"
                        : "motors turn the wrong way: " + String.join(", ", motors),
                "the incoming conductors; loads are on other phases than planned");
    }

    /** Idle, beside what the loads come to. */
    private void total(Point point, PlaceReading reading, Phase phase, double amps) {
        double most = idle.runningAmps(point).getOrDefault(phase, 0.0);
        double least = idle.metered(point).getOrDefault(phase, 0.0);
        double tolerance = SiteAllowances.spreadAmps(layout, point, phase)
                + reading.visit().meter().errorAmps(amps);
        if (amps <= most + tolerance && amps >= least - tolerance) {
            return;
        }
        Optional<Double> measured = measuredSum(point, phase);
        boolean isMore = amps > most;
        String cause;
        String lookAt;
        if (measured.isPresent() && isMore && amps > measured.get() + tolerance) {
            cause = Figures.HUNDREDTHS.amps(amps - measured.get()) + " more than its loads as measured one by one";
            lookAt = "what hangs on it that no plan has";
        } else if (isMore) {
            cause = "its loads draw more than stated, or something hangs on it that no plan has";
            lookAt = "its loads one by one, the greatest first";
        } else {
            cause = "some of its loads are off, on other phases, or draw less than stated";
            lookAt = "which breakers are open; then the clamp and its range";
        }
        add(
                Weight.DIFFERS,
                reading,
                phase,
                MeasuredQuantity.IDLE,
                OptionalDouble.of(isMore ? most : least),
                OptionalDouble.of(amps),
                tolerance,
                cause,
                lookAt);
    }

    /** What its loads were measured at one by one, as magnitudes; empty where some were not. */
    private Optional<Double> measuredSum(Point point, Phase phase) {
        double sum = 0;
        for (NodeLoads.Seen each : layout.nodeLoads().seen(point.index())) {
            double part = each.parts()[phase.ordinal()];
            if (part > 0) {
                OptionalDouble amps = readings.of(each.placement().id()).stream()
                        .filter(pole -> pole.idleAmps().isPresent())
                        .mapToDouble(pole -> pole.idleAmps().getAsDouble())
                        .max();
                if (amps.isEmpty()) {
                    return Optional.empty();
                }
                sum += part * amps.getAsDouble();
            }
        }
        return Optional.of(sum);
    }

    private void add(
            Weight weight,
            PlaceReading reading,
            Phase phase,
            MeasuredQuantity quantity,
            OptionalDouble planned,
            OptionalDouble measured,
            double tolerance,
            String cause,
            String lookAt) {
        found.add(new Discrepancy(
                weight,
                reading.place(),
                Optional.ofNullable(phase),
                quantity,
                planned,
                measured,
                tolerance,
                cause,
                lookAt,
                reading.visit()));
    }
}
