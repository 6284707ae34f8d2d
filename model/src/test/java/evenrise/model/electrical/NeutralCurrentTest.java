package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Signs and properties; values from outside are in the validation tables. */
class NeutralCurrentTest {
    private static NeutralCurrent on(PhaseSystem system) {
        return new NeutralCurrent(system);
    }

    @Property(tries = 1000)
    void isNoMoreThanTheLargestPhaseAtUnity(
            @ForAll @DoubleRange(max = 500) double a,
            @ForAll @DoubleRange(max = 500) double b,
            @ForAll @DoubleRange(max = 500) double c) {
        NeutralCurrent neutral = on(PhaseSystem.THREE_PHASE);
        neutral.add(Phase.A, a, Lag.behind(1), 0);
        neutral.add(Phase.B, b, Lag.behind(1), 0);
        neutral.add(Phase.C, c, Lag.behind(1), 0);

        assertThat(neutral.amps()).isLessThanOrEqualTo(Math.max(a, Math.max(b, c)) + 1e-9);
    }

    @Property(tries = 1000)
    void equalsTheClosedFormAtEqualPowerFactor(
            @ForAll @DoubleRange(max = 500) double a,
            @ForAll @DoubleRange(max = 500) double b,
            @ForAll @DoubleRange(max = 500) double c,
            @ForAll @DoubleRange(min = 0.1, max = 1) double powerFactor) {
        NeutralCurrent neutral = on(PhaseSystem.THREE_PHASE);
        neutral.add(Phase.A, a, Lag.behind(powerFactor), 0);
        neutral.add(Phase.B, b, Lag.behind(powerFactor), 0);
        neutral.add(Phase.C, c, Lag.behind(powerFactor), 0);

        double square = a * a + b * b + c * c - a * b - b * c - c * a;
        assertThat(neutral.amps()).isCloseTo(Math.sqrt(Math.max(0, square)), within(1e-5));
    }

    @Test
    void isNotTheSumWithLostSigns() {
        NeutralCurrent neutral = on(PhaseSystem.THREE_PHASE);
        neutral.add(Phase.A, 10, Lag.behind(1), 0);
        neutral.add(Phase.B, 8, Lag.behind(1), 0);
        neutral.add(Phase.C, 6, Lag.behind(1), 0);

        // a forum thread prints 15.1 A for these, because the −BC and −CA of the closed form were lost
        assertThat(neutral.amps()).isNotCloseTo(15.1, within(10.0));
    }

    @Test
    void keepsRmsOfOneLoadWhateverItsThirdHarmonic() {
        for (PhaseSystem system : PhaseSystem.values()) {
            NeutralCurrent neutral = on(system);
            neutral.add(Phase.A, 13, Lag.behind(0.8), 0.75);

            assertThat(neutral.amps()).isCloseTo(13, within(1e-9));
        }
    }

    @Test
    void addsThirdHarmonicsOfThreePhasesThatHaveNoFundamentalLeft() {
        NeutralCurrent neutral = on(PhaseSystem.THREE_PHASE);
        for (Phase phase : Phase.values()) {
            neutral.add(phase, 5, Lag.behind(1), 0.75);
        }

        // I1 = 5/√(1 + 0.75²) = 4 A; I3 = 3 A a phase
        assertThat(neutral.amps()).isCloseTo(9, within(1e-9));
    }

    @Test
    void opposesThirdHarmonicsOfTheLegsOfSplitPhase() {
        NeutralCurrent neutral = on(PhaseSystem.SPLIT_PHASE);
        neutral.add(Phase.A, 10, Lag.behind(1), 0.75);
        neutral.add(Phase.B, 5, Lag.behind(1), 0.75);

        // 8 − 4 A and 6 − 3 A in quadrature
        assertThat(neutral.amps()).isCloseTo(5, within(1e-9));
    }

    @Test
    void addsEverythingOnASinglePhase() {
        NeutralCurrent neutral = on(PhaseSystem.SINGLE_PHASE);
        neutral.add(Phase.A, 10, Lag.behind(1), 0.75);
        neutral.add(Phase.A, 5, Lag.behind(1), 0.75);

        // 8 + 4 A and 6 + 3 A in quadrature
        assertThat(neutral.amps()).isCloseTo(15, within(1e-9));
    }
}
