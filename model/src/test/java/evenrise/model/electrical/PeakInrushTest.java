package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PeakInrushTest {
    private static Draw draw(double base, double excess, double half, double on, Phase... phases) {
        return new Draw(new InrushEnvelope(base, excess, half, 0.1), List.of(phases), OptionalDouble.of(on));
    }

    private static Draw standing(double base, Phase... phases) {
        return new Draw(new InrushEnvelope(base, 99, 1, 0.1), List.of(phases), OptionalDouble.empty());
    }

    @Nested
    class OnePhase {
        @Test
        void isNothingWithoutLoads() {
            PeakInrush peak = PeakInrush.of(List.of());

            assertThat(peak.amps(Phase.A)).isZero();
            assertThat(peak.atSeconds(Phase.A)).isZero();
        }

        @Test
        void isTheBaseOfWhatIsAlwaysOn() {
            PeakInrush peak = PeakInrush.of(List.of(standing(7, Phase.A), standing(4, Phase.A)));

            assertThat(peak.amps(Phase.A)).isEqualTo(11);
            assertThat(peak.atSeconds(Phase.A)).isZero();
        }

        @Test
        void addsWhatIsLeftOfEarlierLoads() {
            // at the second switch-on, 1.2 s after the first, the first has decayed for 1.2 − 2·0.1 = 1 s: half of 80
            PeakInrush peak = PeakInrush.of(
                    List.of(standing(5, Phase.A), draw(1, 80, 1, 2, Phase.A), draw(2, 50, 1, 3.2, Phase.A)));

            assertThat(peak.amps(Phase.A)).isCloseTo(5 + 1 + 40 + 2 + 50, within(1e-9));
            assertThat(peak.atSeconds(Phase.A)).isEqualTo(3.2);
        }

        @Test
        void addsWhatComesOnTogetherInFull() {
            PeakInrush peak = PeakInrush.of(List.of(draw(1, 80, 1, 2, Phase.A), draw(2, 50, 1, 2, Phase.A)));

            assertThat(peak.amps(Phase.A)).isCloseTo(133, within(1e-9));
        }

        @Test
        void addsInFullWhatFollowsWithinTwiceTheTolerance() {
            PeakInrush peak = PeakInrush.of(List.of(draw(0, 80, 1, 2, Phase.A), draw(0, 50, 1, 2.2, Phase.A)));

            assertThat(peak.amps(Phase.A)).isCloseTo(130, within(1e-9));
        }

        @Test
        void takesTheFirstOfEqualPeaks() {
            PeakInrush peak = PeakInrush.of(List.of(draw(0, 80, 1e-3, 9, Phase.A), draw(0, 80, 1e-3, 5, Phase.A)));

            assertThat(peak.atSeconds(Phase.A)).isEqualTo(5);
        }
    }

    @Nested
    class SeveralPhases {
        @Test
        void countsALoadOnEveryPhaseThatItTouchesAndNoOther() {
            PeakInrush peak = PeakInrush.of(List.of(draw(1, 9, 1, 0, Phase.A, Phase.C), draw(2, 18, 1, 50, Phase.B)));

            assertThat(peak.amps(Phase.A)).isEqualTo(10);
            assertThat(peak.amps(Phase.B)).isEqualTo(20);
            assertThat(peak.amps(Phase.C)).isEqualTo(10);
            assertThat(peak.atSeconds(Phase.B)).isEqualTo(50);
        }
    }

    @Nested
    class AgainstADenseScan {
        @Test
        void isNeverBelowAnyInstantAndReachedAtItsOwn() {
            Random random = new Random(20260101);
            for (int round = 0; round < 200; round++) {
                List<Draw> draws = some(random);
                PeakInrush peak = PeakInrush.of(draws);
                for (Phase phase : Phase.values()) {
                    double reached = sum(draws, phase, peak.atSeconds(phase) - 0.1);
                    assertThat(peak.amps(phase)).isCloseTo(reached, within(1e-9));
                    for (double at = -0.2; at < 12; at += 0.05) {
                        assertThat(sum(draws, phase, at)).isLessThanOrEqualTo(peak.amps(phase) + 1e-9);
                    }
                }
            }
        }

        @Test
        void holdsForManyLoadsAndInstants() {
            Random random = new Random(7);
            List<Draw> draws = new ArrayList<>();
            for (int i = 0; i < 2000; i++) {
                draws.add(draw(
                        random.nextDouble(),
                        100 * random.nextDouble(),
                        0.001 + random.nextDouble(),
                        60 * random.nextDouble(),
                        Phase.values()[i % 3]));
            }

            PeakInrush peak = PeakInrush.of(draws);

            for (Phase phase : Phase.values()) {
                double highest = draws.stream()
                        .filter(each -> each.phases().contains(phase))
                        .mapToDouble(each -> sum(draws, phase, each.onSeconds().getAsDouble() - 0.1))
                        .max()
                        .orElseThrow();
                assertThat(peak.amps(phase)).isCloseTo(highest, within(1e-8));
            }
        }

        private List<Draw> some(Random random) {
            List<Draw> draws = new ArrayList<>();
            for (int i = random.nextInt(12); i >= 0; i--) {
                Phase phase = Phase.values()[random.nextInt(3)];
                double base = 5 * random.nextDouble();
                draws.add(
                        random.nextInt(5) == 0
                                ? standing(base, phase)
                                : draw(
                                        base,
                                        random.nextInt(4) == 0 ? 0 : 90 * random.nextDouble(),
                                        0.001 + 2 * random.nextDouble(),
                                        random.nextInt(20) / 2.0,
                                        phase));
            }
            return draws;
        }

        private double sum(List<Draw> draws, Phase phase, double at) {
            return draws.stream()
                    .filter(each -> each.phases().contains(phase))
                    .mapToDouble(each -> each.onSeconds().isPresent()
                            ? each.envelope().amps(each.onSeconds().getAsDouble(), at)
                            : each.envelope().baseAmps())
                    .sum();
        }
    }
}
