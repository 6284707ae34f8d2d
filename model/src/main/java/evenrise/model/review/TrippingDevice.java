package evenrise.model.review;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.Disconnection;
import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.project.Circuit;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.rules.Distribution.Point;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to disconnect a fault.
 *
 * @param label how messages call it
 * @param band of its magnetic trip; empty where nothing is stated
 * @param isMiniature whether it is one of IEC 60898-1, whose thermal part is not counted on within 5 s
 * @param residualAmps rated residual current of a device in the circuit, or before it
 */
record TrippingDevice(
        String place,
        String label,
        double ratedAmps,
        Optional<InstantaneousBand> band,
        boolean isMiniature,
        boolean isFinal,
        OptionalDouble residualAmps) {

    /** A residual-current device of the feeder covers what is behind it, too. */
    static TrippingDevice ofBranch(Load load, Point point) {
        boolean isByCurve = load.circuit()
                .filter(circuit -> circuit.instantaneousRatio().isPresent()
                        || circuit.instantaneous().isPresent())
                .isEmpty();
        OptionalDouble own = load.circuit().map(Circuit::residualCurrentAmps).orElse(OptionalDouble.empty());
        return new TrippingDevice(
                load.id(),
                "load " + Phrase.quoted(load.id()),
                load.breakerAmps(),
                Devices.ofBranch(load).band(),
                isByCurve,
                true,
                own.isPresent() ? own : residual(point));
    }

    static TrippingDevice ofFeeder(Point point) {
        return new TrippingDevice(
                point.id(),
                "the feeder of " + point.label(),
                Devices.ofFeeder(point).ratedAmps(),
                Devices.ofFeeder(point).band(),
                point.feeder()
                        .flatMap(Feeder::device)
                        .filter(device -> device.curve().isPresent()
                                && device.instantaneous().isEmpty())
                        .isPresent(),
                false,
                residual(point));
    }

    /** Current above which it is sure to trip at once; without limit where nothing is stated of its band. */
    double tripsAmps() {
        return band.map(each -> each.mostRatio() * ratedAmps).orElse(Double.POSITIVE_INFINITY);
    }

    /** The least current at which it is sure to trip at once, by its band or by residual current; without limit where neither is stated. */
    double surelyTripsAmps() {
        return residualAmps.isPresent()
                ? Math.min(tripsAmps(), Disconnection.RESIDUAL_RATIO * residualAmps.getAsDouble())
                : tripsAmps();
    }

    boolean tripsAt(double amps) {
        return amps >= tripsAmps() || residualTripsAt(amps);
    }

    boolean residualTripsAt(double amps) {
        return residualAmps.isPresent() && amps >= Disconnection.RESIDUAL_RATIO * residualAmps.getAsDouble();
    }

    private static OptionalDouble residual(Point point) {
        return point.feeder().map(Feeder::residualCurrentAmps).orElse(OptionalDouble.empty());
    }
}
