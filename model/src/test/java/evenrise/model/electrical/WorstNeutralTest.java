package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WorstNeutralTest {
    private static final double TIGHT = 1 + 2e-9;

    private static NeutralCurrent.Share on(Phase phase, double amps, double powerFactor, double third) {
        return NeutralCurrent.share(PhaseSystem.THREE_PHASE, phase, amps, Lag.behind(powerFactor), third);
    }

    private static double worst(NeutralCurrent.Share... shares) {
        return WorstNeutral.of(List.of(shares)).amps();
    }

    @Nested
    class ByHand {
        @Test
        void ofThreeEqualPhasesIsThatOfOne() {
            // 75 A on each: all on 0; one on 75; two on |75∠0° + 75∠−120°| = 75.
            assertThat(worst(on(Phase.A, 75, 1, 0), on(Phase.B, 75, 1, 0), on(Phase.C, 75, 1, 0)))
                    .isCloseTo(75, within(1e-4));
        }

        @Test
        void ofThirdHarmonicsIsThatOfTwoPhasesUpToAPoint() {
            // Rms 1 A, r = 0.4: I1² = 1/1.16. Three on: 3·0.4/√1.16 = 1.1142. Two on: √(1 + (2·0.4)²)/√1.16 = 1.1890.
            assertThat(worst(on(Phase.A, 1, 1, 0.4), on(Phase.B, 1, 1, 0.4), on(Phase.C, 1, 1, 0.4)))
                    .isCloseTo(1.1890, within(1e-4));
            // r = 1: three on 3/√2 = 2.1213; two on √(1 + 4)/√2 = 1.5811.
            assertThat(worst(on(Phase.A, 1, 1, 1), on(Phase.B, 1, 1, 1), on(Phase.C, 1, 1, 1)))
                    .isCloseTo(2.1213, within(1e-4));
        }

        @Test
        void ofPhasesThatLagAndLeadIsTheirSumWhereTheyMeet() {
            // A lags by 60°, B leads by 60°: both stand at −60°; 10 + 10.
            assertThat(worst(
                            on(Phase.A, 10, 0.5, 0),
                            NeutralCurrent.share(PhaseSystem.THREE_PHASE, Phase.B, 10, Lag.ahead(0.5), 0)))
                    .isCloseTo(20, within(1e-4));
        }

        @Test
        void ofTwoLegsIsThatOfTheGreaterOne() {
            NeutralCurrent.Share a = NeutralCurrent.share(PhaseSystem.SPLIT_PHASE, Phase.A, 30, Lag.NONE, 0.5);
            NeutralCurrent.Share b = NeutralCurrent.share(PhaseSystem.SPLIT_PHASE, Phase.B, 40, Lag.NONE, 0.5);

            assertThat(worst(a, b)).isCloseTo(40, within(1e-4));
        }

        @Test
        void ofNothingIsNothing() {
            assertThat(worst()).isZero();
            assertThat(worst(on(Phase.A, 0, 1, 0))).isZero();
        }
    }

    @Nested
    class AgainstEverySubset {
        @ParameterizedTest
        @EnumSource(PhaseSystem.class)
        void isTheGreatestOrAHairAboveIt(PhaseSystem system) {
            Random random = new Random(5);
            for (int trial = 0; trial < 60; trial++) {
                int count = trial < 4 ? 16 : 1 + random.nextInt(12);
                boolean isHarmonic = trial % 3 > 0;
                List<NeutralCurrent.Share> shares = new ArrayList<>();
                for (int i = 0; i < count; i++) {
                    Phase phase =
                            system.phases().get(random.nextInt(system.phases().size()));
                    Lag lag = random.nextInt(4) == 0
                            ? Lag.ahead(0.05 + 0.95 * random.nextDouble())
                            : Lag.behind(0.05 + 0.95 * random.nextDouble());
                    shares.add(NeutralCurrent.share(
                            system,
                            phase,
                            0.1 + 30 * random.nextDouble(),
                            lag,
                            isHarmonic ? 2 * random.nextDouble() : 0));
                }

                double greatest = greatest(shares);

                assertThat(WorstNeutral.of(shares).amps()).isBetween(greatest * (1 - 1e-12), greatest * TIGHT);
                assertThat(WorstNeutral.of(shares).isWithin(greatest * 1.001)).isTrue();
                assertThat(WorstNeutral.of(shares).isWithin(greatest * 0.999)).isFalse();
            }
        }

        private static double greatest(List<NeutralCurrent.Share> shares) {
            double greatest = 0;
            for (int subset = 0; subset < 1 << shares.size(); subset++) {
                double real = 0;
                double imaginary = 0;
                double third = 0;
                for (int i = 0; i < shares.size(); i++) {
                    if ((subset >> i & 1) != 0) {
                        real += shares.get(i).realAmps();
                        imaginary += shares.get(i).imaginaryAmps();
                        third += shares.get(i).thirdAmps();
                    }
                }
                greatest = Math.max(greatest, Math.sqrt(real * real + imaginary * imaginary + third * third));
            }
            return greatest;
        }
    }

    @Test
    void aLoadMoreCountsAsIfItHadBeenThere() {
        NeutralCurrent.Share one = on(Phase.A, 12, 0.9, 0.3);

        double more =
                WorstNeutral.of(List.of(on(Phase.B, 20, 1, 0))).with(one, 2).amps();

        assertThat(more).isCloseTo(worst(one, one, on(Phase.B, 20, 1, 0)), within(1e-4));
    }

    /** A ring of directions, in which every half reaches equally far but for a hair: the hardest case for the search. */
    @Test
    void isNeverBelowWhereNoDirectionStandsOut() {
        List<NeutralCurrent.Share> ring = new ArrayList<>();
        for (int i = 0; i < 360; i++) {
            ring.add(new NeutralCurrent.Share(Math.cos(Math.toRadians(i)), Math.sin(Math.toRadians(i)), 0));
        }

        // Half of the ring: 1/sin(0.5°) = 114.593.
        assertThat(WorstNeutral.of(ring).amps()).isBetween(114.5930, 114.5935);
    }
}
