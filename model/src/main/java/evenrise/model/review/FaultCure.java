package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.breaker.Disconnection;
import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.project.TripCurve;
import evenrise.model.rules.Layout;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Advice about trip bands that keeps both ends in sight: a band that trips later holds an inrush and may leave a fault on;
 * one that trips earlier the other way round.
 */
final class FaultCure {
    private FaultCure() {}

    /** What the loop may have at most, as a sentence without its full stop. */
    static String most(TrippingDevice device, FaultLoops.Loop loop, double volts) {
        double most = Disconnection.mostLoopOhms(FaultCurrent.LEAST_VOLTAGE_FACTOR, volts, device.tripsAmps());
        return "The loop may have at most " + Decimals.apart(most, loop.ohms(), 3) + " Ω";
    }

    /** For a loop that does not trip its device. */
    static String text(TrippingDevice device, FaultLoops.Loop loop) {
        String band = device.isMiniature()
                ? latest(device, loop)
                        .map(curve -> " a band up to " + curve + " if the inrush allows,")
                        .orElse("")
                : " a trip that is sure by " + HUNDREDTHS.amps(loop.leastAmps()) + " if the inrush allows,";
        return "take" + band + " a larger protective conductor, or a residual-current device";
    }

    /** For an inrush that the present band does not hold, once it is known whether the loop would trip a later one. */
    static String later(TrippingDevice device, Optional<FaultLoops.Loop> loop, double inrushAmps, String needs) {
        String otherwise = " a device that limits its inrush";
        if (loop.isEmpty()) {
            return "take" + otherwise
                    + ", or a band that trips later where its fault loop still trips it, which is"
                    + " not checked: needs " + needs;
        }
        double amps = loop.get().leastAmps();
        if (device.residualTripsAt(amps)) {
            return "take a band that trips later, since its residual-current device disconnects a fault, or"
                    + otherwise;
        }
        if (!device.isMiniature()) {
            return inrushAmps < amps
                    ? "take a setting or device that holds " + HUNDREDTHS.amps(inrushAmps, amps)
                            + " and trips at once by " + HUNDREDTHS.amps(amps, inrushAmps)
                            + ", which a fault draws at least, or"
                            + otherwise
                    : none(device, loop.get(), otherwise);
        }
        Optional<TripCurve> enough = Stream.of(TripCurve.values())
                .filter(curve -> InstantaneousBand.of(curve).leastRatio() * device.ratedAmps() >= inrushAmps)
                .filter(curve -> InstantaneousBand.of(curve).mostRatio() * device.ratedAmps() <= amps)
                .findFirst();
        return enough.map(curve -> "take curve " + curve + ", which holds it and which a fault ("
                        + loop.get().text() + ") still trips at once, or" + otherwise)
                .orElseGet(() -> none(device, loop.get(), otherwise));
    }

    private static String none(TrippingDevice device, FaultLoops.Loop loop, String otherwise) {
        return "take" + otherwise + "; a later trip is of no use here, for a fault draws " + loop.text()
                + String.format(Locale.ROOT, ", %.1f times the rating", loop.leastAmps() / device.ratedAmps())
                + ", unless a residual-current device disconnects it";
    }

    /** How far the trip of a device before others may be raised, by the loop that it has to see; for the end of a cure. */
    static String room(Layout layout, String place) {
        Optional<FaultLoops.Loop> loop = layout.distribution()
                .point(place)
                .filter(point -> point.parent() >= 0)
                .flatMap(point -> FaultLoops.of(layout.project()).flatMap(loops -> loops.ofFeeder(point)));
        return loop.map(known -> ", no later than sure at " + HUNDREDTHS.amps(known.leastAmps())
                        + ", which a fault on its feeder draws at least")
                .orElse(", after its fault loop is checked, which it is not");
    }

    /** The latest curve that the loop trips. */
    private static Optional<TripCurve> latest(TrippingDevice device, FaultLoops.Loop loop) {
        return Stream.of(TripCurve.values())
                .filter(curve -> InstantaneousBand.of(curve).mostRatio() * device.ratedAmps() <= loop.leastAmps())
                .reduce((first, second) -> second);
    }
}
