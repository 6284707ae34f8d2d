package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Currents that are drawn here, at 50 samples a second with noise of 20 mA. */
class PhaseStepsTest {
    private static final double INTERVAL = 0.02;
    private static final double SIGMA = 0.02;

    private static PhaseSteps steps(long seed, DoubleUnaryOperator amps) {
        Random chance = new Random(seed);
        double[] seconds = new double[400];
        double[] values = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = i * INTERVAL;
            values[i] = amps.applyAsDouble(seconds[i]) + SIGMA * chance.nextGaussian();
        }
        return PhaseSteps.of(seconds, values, 5);
    }

    private static double decay(double since, double amps, double halfSeconds) {
        return since < 0 ? 0 : amps * Math.pow(2, -since / halfSeconds);
    }

    @Nested
    class Steps {
        @Test
        void areFoundWithTheirSize() {
            PhaseSteps steps = steps(1, t -> t < 3.01 ? 2 : t < 5.01 ? 2.5 : 1.5);

            assertThat(steps.size()).isEqualTo(2);
            assertThat(steps.sample(0)).isEqualTo(151);
            assertThat(steps.step(0).amps())
                    .isCloseTo(0.5, within(4 * steps.step(0).sigmaAmps()));
            assertThat(steps.step(1).amps())
                    .isCloseTo(-1, within(4 * steps.step(1).sigmaAmps()));
        }

        @Test
        void areNotFoundInNoise() {
            for (long seed = 1; seed <= 5; seed++) {
                assertThat(steps(seed, t -> 4).size()).isZero();
            }
        }

        /** A motor's 40 A fall away beneath them, at 28 A a second where the first comes. */
        @Test
        void areFoundBeneathASurgeThatDecays() {
            PhaseSteps steps =
                    steps(2, t -> 10 + decay(t - 1.01, 40, 0.7) + (t < 1.51 ? 0 : 0.6) + (t < 2.01 ? 0 : 0.9));

            assertThat(steps.size()).isEqualTo(3);
            assertThat(steps.sample(1)).isBetween(75, 76);
            assertThat(steps.step(1).jumpAmps()).isCloseTo(0.6, within(0.15));
            assertThat(steps.step(2).jumpAmps()).isCloseTo(0.9, within(0.15));
        }
    }

    @Nested
    class Surges {
        /** Peak and half-life of one that is sampled well. */
        @Test
        void areTakenApartFromWhatFlowsInTheEnd() {
            PhaseSteps steps = steps(3, t -> 5 + (t < 3.99 ? 0 : 1.2) + decay(t - 3.99, 30, 0.06));

            assertThat(steps.size()).isEqualTo(1);
            assertThat(steps.step(0).amps()).isCloseTo(1.2, within(0.05));
            assertThat(steps.step(0).halfSeconds()).isCloseTo(0.06, within(0.003));
        }

        /** A quarter of a second after the beginning of one that halves in 10 ms, and of one in 50 ms. */
        @Test
        void hideNoStepThatComesSoonAfter() {
            for (double half : new double[] {0.004, 0.01, 0.05}) {
                PhaseSteps steps =
                        steps(5, t -> 5 + (t < 3.99 ? 0 : 1.2) + decay(t - 3.99, 30, half) + (t < 4.23 ? 0 : 0.8));

                assertThat(steps.size()).as("half-life " + half).isEqualTo(2);
                assertThat(steps.step(1).jumpAmps()).as("half-life " + half).isCloseTo(0.8, within(0.3));
            }
        }

        /** Of one that is over within a sample no more is known than that it was there. */
        @Test
        void leaveTheStepAsItIsWhereTheyAreShort() {
            PhaseSteps steps = steps(4, t -> 5 + (t < 3.99 ? 0 : 1.2) + decay(t - 3.99, 60, 0.003));

            assertThat(steps.size()).isEqualTo(1);
            assertThat(steps.step(0).amps()).isCloseTo(1.2, within(0.05));
        }
    }
}
