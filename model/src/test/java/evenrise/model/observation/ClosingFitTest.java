package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Spread;
import java.util.Random;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;

/** Closings drawn from known spreads, seen by a recorder that takes 50 samples a second. */
class ClosingFitTest {
    private static final double INTERVAL = 0.02;

    private static double[] seen(int count, Random chance, DoubleSupplier late) {
        double[] seen = new double[count];
        for (int i = 0; i < count; i++) {
            seen[i] = late.getAsDouble() + INTERVAL * chance.nextDouble();
        }
        return seen;
    }

    private static double bell(Random chance, double tolerance) {
        double deviations = chance.nextGaussian();
        while (Math.abs(deviations) > 3) {
            deviations = chance.nextGaussian();
        }
        return tolerance * deviations / 3;
    }

    private static double even(Random chance, double tolerance) {
        return tolerance * (2 * chance.nextDouble() - 1);
    }

    @Test
    void knowsAnEvenSpreadWithItsTolerance() {
        for (long seed = 1; seed <= 10; seed++) {
            Random chance = new Random(seed);

            ClosingFit fit = ClosingFit.of(seen(200, chance, () -> even(chance, 0.1)), INTERVAL)
                    .orElseThrow();

            assertThat(fit.spread()).as("seed " + seed).isEqualTo(Spread.UNIFORM);
            assertThat(fit.isSure()).as("seed " + seed).isTrue();
            assertThat(fit.toleranceSeconds()).as("seed " + seed).isCloseTo(0.1, within(0.01));
        }
    }

    /** Its deviation is a third of the tolerance: of 200 closings it is known to 5 %, √(1/400), so to 15 % but for one in 400. */
    @Test
    void knowsABellWithItsTolerance() {
        for (long seed = 1; seed <= 10; seed++) {
            Random chance = new Random(seed);

            ClosingFit fit = ClosingFit.of(seen(200, chance, () -> bell(chance, 0.1)), INTERVAL)
                    .orElseThrow();

            assertThat(fit.spread()).as("seed " + seed).isEqualTo(Spread.NORMAL);
            assertThat(fit.isSure()).as("seed " + seed).isTrue();
            assertThat(fit.toleranceSeconds()).as("seed " + seed).isCloseTo(0.1, within(0.015));
        }
    }

    @Test
    void takesNoScatterOfTheRecorderForThatOfTheGear() {
        Random chance = new Random(1);

        ClosingFit fit = ClosingFit.of(seen(200, chance, () -> 0), INTERVAL).orElseThrow();

        assertThat(fit.toleranceSeconds()).isLessThan(INTERVAL / 4);
    }

    /** Neither fits spreads that are hardly wider than the interval any better. */
    @Test
    void doesNotStateWhichItIsWhereTheRecorderIsTooCoarse() {
        Random chance = new Random(2);

        ClosingFit fit = ClosingFit.of(seen(30, chance, () -> even(chance, 0.005)), INTERVAL)
                .orElseThrow();

        assertThat(fit.isSure()).isFalse();
    }

    @Test
    void saysNothingOfAFew() {
        assertThat(ClosingFit.of(new double[19], INTERVAL)).isEmpty();
        assertThat(ClosingFit.of(new double[20], INTERVAL)).isPresent();
    }
}
