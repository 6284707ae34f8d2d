package evenrise.model.measured;

import evenrise.model.measured.Allowed.Error;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.rules.UseCurrents;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What each reading of a plant may be before {@link MeasuredPlant} finds something. A running current below what is stated is
 * no difference, since nobody may have been in full use.
 */
public final class SiteAllowances {
    private final Layout layout;
    private final UseCurrents idle;
    private final List<NodeLimits> limits;

    public SiteAllowances(Layout layout) {
        this.layout = layout;
        this.idle = UseCurrents.of(layout, load -> load.idleAmps());
        this.limits = NodeLimits.of(layout.project());
    }

    public Allowed idle(Load load) {
        Expectation expected = Expectation.idle(load);
        return Allowed.between(
                expected.amps() - expected.spreadAmps(), expected.amps() + expected.spreadAmps(), Error.CURRENT);
    }

    public Allowed running(Load load) {
        Expectation expected = Expectation.running(load);
        return Allowed.upTo(
                expected.amps() + (expected.isDrift() ? expected.spreadAmps() : 0),
                OptionalDouble.of(load.breakerAmps()),
                Error.CURRENT);
    }

    public Allowed peak(Load load) {
        return Allowed.upTo(load.inrushAmps(), OptionalDouble.empty(), Error.CURRENT);
    }

    /** Empty for what no output switches. */
    public Optional<Allowed> on(Placement placement) {
        return placement.isSequenced() ? Optional.of(about(placement.onSeconds().orElseThrow())) : Optional.empty();
    }

    /** Likewise, from the command to switch off. */
    public Optional<Allowed> off(Placement placement) {
        return placement.isSequenced()
                ? Optional.of(about(layout.clocks()
                        .offSeconds(placement.load(), placement.onSeconds().orElseThrow())))
                : Optional.empty();
    }

    private Allowed about(double seconds) {
        double tolerance = layout.project().timingToleranceSeconds();
        return Allowed.between(seconds - tolerance, seconds + tolerance, Error.TIME);
    }

    /** From line to neutral. */
    public Allowed volts(Point point) {
        SupplyVoltage allowed = SupplyVoltage.of(layout.project());
        double nominal = point.lineToNeutralVolts();
        return new Allowed(
                OptionalDouble.empty(),
                OptionalDouble.of(allowed.band().leastRatio() * nominal),
                OptionalDouble.empty(),
                OptionalDouble.of(allowed.band().mostRatio() * nominal),
                Error.NONE);
    }

    /** Of all that hangs on it: as phasors add up to at least, and magnitudes at most. */
    public Allowed idle(Point point, Phase phase) {
        double spread = spreadAmps(layout, point, phase);
        return Allowed.between(
                idle.metered(point).getOrDefault(phase, 0.0) - spread,
                idle.runningAmps(point).getOrDefault(phase, 0.0) + spread,
                Error.CURRENT);
    }

    public Allowed running(Point point) {
        return Allowed.below(limits.get(point.index()).continuousAmps(), Error.CURRENT);
    }

    /** Empty where it has no inrush limit. */
    public Optional<Allowed> peak(Point point) {
        return limits.get(point.index()).inrushLimitAmps().stream()
                .mapToObj(most -> Allowed.below(most, Error.CURRENT))
                .findFirst();
    }

    public Allowed neutral(Point point) {
        return Allowed.below(limits.get(point.index()).neutralAmps(), Error.CURRENT);
    }

    public Allowed insulationMegohms() {
        return Allowed.from(PlaceTotals.LEAST_MEGOHMS);
    }

    /** @param ratedMilliamps of the device */
    public Allowed leakageMilliamps(double ratedMilliamps) {
        return Allowed.upTo(DeviceTests.MOST_LEAKAGE * ratedMilliamps, OptionalDouble.empty(), Error.NONE);
    }

    /** @param ratedMilliamps of the device */
    public Allowed tripMilliamps(double ratedMilliamps) {
        return Allowed.below(ratedMilliamps, Error.NONE);
    }

    public Allowed tripMillis() {
        return Allowed.below(DeviceTests.MOST_MILLIS, Error.NONE);
    }

    /** Of loads one by one, whose deviations are independent. */
    static double spreadAmps(Layout layout, Point point, Phase phase) {
        double squares = 0;
        for (NodeLoads.Seen each : layout.nodeLoads().seen(point.index())) {
            double amps = each.parts()[phase.ordinal()]
                    * Expectation.idle(each.placement().load()).spreadAmps();
            squares += amps * amps;
        }
        return Math.sqrt(squares);
    }
}
