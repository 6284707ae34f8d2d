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

    /** 10 A on A and a bare 10 A on B: the two at 120° add to 10 A, as at any equal lag; with 60° between them to √3·10 A. */
    @Test
    void addsBareFundamentalsToLoads() {
        NeutralCurrent neutral = on(PhaseSystem.THREE_PHASE);
        neutral.add(Phase.A, 10, Lag.behind(0.5), 0);
        neutral.addFundamental(Phase.B, 10, Lag.behind(0.5));
        NeutralCurrent apart = on(PhaseSystem.THREE_PHASE);
        apart.add(Phase.A, 10, Lag.behind(0.5), 0); // at −60°
        apart.addFundamental(Phase.B, 10, Lag.NONE); // at −120°

        assertThat(neutral.amps()).isCloseTo(10, within(1e-9));
        assertThat(apart.amps()).isCloseTo(10 * Math.sqrt(3), within(1e-9));
    }

    /** Third harmonics of split-phase legs oppose each other, those of three phases coincide: 10 A with r = 0.75 have 6 A. */
    @Test
    void signsTheThirdHarmonicOfASecondLegAlone() {
        assertThat(NeutralCurrent.share(PhaseSystem.SPLIT_PHASE, Phase.A, 10, Lag.NONE, 0.75)
                        .thirdAmps())
                .isCloseTo(6, within(1e-9));
        assertThat(NeutralCurrent.share(PhaseSystem.SPLIT_PHASE, Phase.B, 10, Lag.NONE, 0.75)
                        .thirdAmps())
                .isCloseTo(-6, within(1e-9));
        assertThat(NeutralCurrent.share(PhaseSystem.THREE_PHASE, Phase.B, 10, Lag.NONE, 0.75)
                        .thirdAmps())
                .isCloseTo(6, within(1e-9));
    }
}
