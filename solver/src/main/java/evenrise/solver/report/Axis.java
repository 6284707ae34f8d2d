package evenrise.solver.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * An axis of a drawing with its ticks, at round numbers.
 *
 * @param from the first tick
 * @param step from tick to tick: 1, 2 or 5 times a power of ten
 * @param steps how many there are
 */
public record Axis(double from, double step, int steps) {
    private static final int MOST_STEPS = 6;

    /** Steps of a whole range, less the room at its ends. */
    private static final double STEPS_OF_A_RANGE = 5 / 1.2;

    /** From 0 to the last tick that is not beyond {@code most}. */
    public static Axis fromZero(double most) {
        double step = roundStep(most / MOST_STEPS);
        return new Axis(0, step, (int) Math.floor(most / step + 1e-9));
    }

    /** From a tick below {@code least} to one above {@code most}, with some room at both ends. */
    public static Axis around(double least, double most) {
        double span = Math.max(most - least, 0.01 * Math.max(1, most));
        double step = roundStep(span / STEPS_OF_A_RANGE);
        double from = Math.floor((least - 0.05 * span) / step) * step;
        return new Axis(from, step, (int) Math.ceil((most + 0.05 * span - from) / step));
    }

    /** The next of 1, 2, 5 times a power of ten. */
    private static double roundStep(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        double digits = least / power;
        return power * (digits <= 1 ? 1 : digits <= 2 ? 2 : digits <= 5 ? 5 : 10);
    }

    public List<Double> ticks() {
        return IntStream.rangeClosed(0, steps).mapToObj(i -> from + i * step).toList();
    }

    /** Where a value is: 0 at the first tick, 1 at the last. */
    public double part(double value) {
        return (value - from) / (step * steps);
    }

    /** A tick in words: every one with the decimals that a step has. */
    public String label(double tick) {
        int decimals = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        return String.format(Locale.ROOT, "%." + decimals + "f", tick);
    }
}
