package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.project.Circuit;
import evenrise.model.project.Device;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.Load;
import evenrise.model.project.Supply;
import evenrise.model.project.TripCurve;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Protective devices of a plant and what is known of their instantaneous trip. */
final class Devices {
    private Devices() {}

    /**
     * One device.
     *
     * @param place load, panel or supply that it protects
     * @param label how messages call it
     * @param band of its instantaneous trip, over its rating; empty where nothing is stated
     */
    record Rated(String place, String label, double ratedAmps, Optional<InstantaneousBand> band) {
        double holdsAmps() {
            return band.orElseThrow().leastRatio() * ratedAmps;
        }

        double tripsAmps() {
            return band.orElseThrow().mostRatio() * ratedAmps;
        }

        /**
         * As what is behind a transformer sees it, in currents of the secondary.
         *
         * @param primaryOverSecondary current that it sees of one behind the transformer
         */
        Rated seenThrough(double primaryOverSecondary) {
            return new Rated(
                    place, label + " (by currents behind its transformer)", ratedAmps / primaryOverSecondary, band);
        }

        /** Its rating and its range, in words. */
        String text() {
            return label + " of " + HUNDREDTHS.amps(ratedAmps) + " holds up to " + HUNDREDTHS.amps(holdsAmps())
                    + " and trips at once above " + HUNDREDTHS.amps(tripsAmps());
        }
    }

    static Rated ofBranch(Load load) {
        Optional<InstantaneousBand> stated =
                load.circuit().flatMap(Circuit::instantaneous).map(Devices::band);
        OptionalDouble setting = load.circuit().map(Circuit::instantaneousRatio).orElse(OptionalDouble.empty());
        Optional<InstantaneousBand> band = stated.isPresent()
                ? stated
                : setting.isPresent()
                        ? Optional.of(InstantaneousBand.adjustable(setting.getAsDouble()))
                        : load.curve().map(InstantaneousBand::of);
        return new Rated(load.id(), "the breaker of load " + Phrase.quoted(load.id()), load.breakerAmps(), band);
    }

    /** The feeder's own, whether or not anything is said of its trip; of a transformer on its primary side. */
    static Rated ofFeeder(Point point) {
        Optional<Device> device = point.feeder().flatMap(Feeder::device);
        OptionalDouble stated = device.map(Device::ratedAmps).orElse(OptionalDouble.empty());
        OptionalDouble breaker = point.feeder().map(Feeder::breakerAmps).orElse(OptionalDouble.empty());
        return new Rated(
                point.id(),
                "the feeder device of " + point.label(),
                stated.orElse(breaker.orElse(Feeders.ratedAmps(point))),
                device.flatMap(Devices::band));
    }

    /** The main of a panel or node, at its own voltage; empty where it states none. */
    static Optional<Rated> ofMain(Point point) {
        return point.main()
                .map(main -> new Rated(
                        point.id(),
                        "the main of " + point.label(),
                        main.ratedAmps().orElse(point.ratedAmps()),
                        band(main)));
    }

    /** Those on the way to a panel or node, at its own voltage: its main where it states one, and the feeder's. */
    static List<Rated> before(Point point) {
        List<Rated> all = new ArrayList<>();
        ofMain(point).ifPresent(all::add);
        if (point.transformer().isEmpty()
                && !Feeders.isTap(point)
                && (!point.isFurtherSource() || point.feeder().isPresent())) {
            all.add(ofFeeder(point));
        }
        return all;
    }

    static Rated ofSupply(Supply supply) {
        return new Rated(
                NodeFigures.SUPPLY,
                "the main of the supply",
                supply.main()
                        .map(Device::ratedAmps)
                        .orElse(OptionalDouble.empty())
                        .orElse(supply.ratedAmps()),
                supply.main().flatMap(Devices::band));
    }

    private static Optional<InstantaneousBand> band(Device device) {
        Optional<InstantaneousBand> stated = device.instantaneous().map(Devices::band);
        return stated.isPresent() ? stated : device.curve().map((TripCurve curve) -> InstantaneousBand.of(curve));
    }

    private static InstantaneousBand band(InstantaneousRange range) {
        return new InstantaneousBand(range.low(), range.high());
    }
}
