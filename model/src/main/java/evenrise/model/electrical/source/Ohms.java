package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import java.util.ArrayList;
import java.util.List;

/**
 * Impedances in series, some of them known in magnitude alone: their angles may be anything from a resistance's to a
 * reactance's.
 *
 * @param assumed all of them, the unknown angles as they are assumed
 * @param known those with a stated angle
 * @param unknown magnitudes of the others
 */
public record Ohms(Impedance assumed, Impedance known, List<Double> unknown) {
    public Ohms {
        unknown = List.copyOf(unknown);
    }

    public static Ohms of(Impedance impedance, boolean isAngleStated) {
        return new Ohms(
                impedance,
                isAngleStated ? impedance : Impedance.ZERO,
                isAngleStated ? List.of() : List.of(impedance.magnitudeOhms()));
    }

    public Ohms plus(Impedance more) {
        return new Ohms(assumed.plus(more), known.plus(more), unknown);
    }

    public Ohms plus(Ohms more) {
        List<Double> all = new ArrayList<>(unknown);
        all.addAll(more.unknown);
        return new Ohms(assumed.plus(more.assumed), known.plus(more.known), all);
    }

    public Ohms times(double factor) {
        return new Ohms(
                assumed.times(factor),
                known.times(factor),
                unknown.stream().map(each -> factor * each).toList());
    }

    public boolean isKnown() {
        return unknown.isEmpty();
    }

    /**
     * Least magnitude over all angles: the square of a sum is concave in the angle of each part, as all lie between a
     * resistance and a reactance, so each is at one end of its range.
     */
    public double leastOhms() {
        return least(known, 0);
    }

    /** Magnitudes as numbers. */
    public double mostOhms() {
        return known.magnitudeOhms()
                + unknown.stream().mapToDouble(Double::doubleValue).sum();
    }

    private double least(Impedance so, int next) {
        return next == unknown.size()
                ? so.magnitudeOhms()
                : Math.min(
                        least(so.plus(new Impedance(unknown.get(next), 0)), next + 1),
                        least(so.plus(new Impedance(0, unknown.get(next))), next + 1));
    }
}
