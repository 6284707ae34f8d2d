package evenrise.solver.sample;

import java.util.List;
import java.util.Random;

/** Seeded draws. {@link Random} states its algorithm, so a seed gives the same draws everywhere. */
final class SeededDraws {
    private final Random random;

    SeededDraws(long seed) {
        random = new Random(seed);
    }

    /** A whole number, both ends included. */
    int whole(int from, int to) {
        return from + random.nextInt(to - from + 1);
    }

    /** A number between the ends, rounded to so many decimals. */
    double between(double from, double to, int decimals) {
        return rounded(from + (to - from) * random.nextDouble(), decimals);
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    <T> T of(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    static double rounded(double value, int decimals) {
        double scale = Math.pow(10, decimals);
        return Math.round(value * scale) / scale;
    }
}
