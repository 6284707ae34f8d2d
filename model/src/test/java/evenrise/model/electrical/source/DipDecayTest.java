package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class DipDecayTest {
    private static DipDecay of(double percent, double halfLifeSeconds) {
        return new DipDecay(new double[] {percent}, new double[] {halfLifeSeconds}, 0);
    }

    @Test
    void staysAboveForAsManyHalvingsAsItTakes() {
        assertThat(of(40, 0.1).secondsAbove(StepDip.mostPercent(10))).isCloseTo(0.2, within(1e-9));
    }

    @Test
    void isNeverAboveWhatItDoesNotReach() {
        assertThat(of(40, 0.1).secondsAbove(40)).isZero();
    }

    @Test
    void addsItsParts() {
        DipDecay both = new DipDecay(new double[] {20, 20}, new double[] {0.1, 0.1}, 0);

        assertThat(both.secondsAbove(StepDip.mostPercent(10))).isCloseTo(0.2, within(1e-9));
    }

    @Test
    void isFlatForTheFirstHalfCycle() {
        DipDecay pulse = new DipDecay(new double[] {40}, new double[] {0.001}, 0.01);

        assertThat(pulse.percentAfter(0.01)).isEqualTo(pulse.percentAfter(0));
        assertThat(pulse.secondsAbove(StepDip.mostPercent(10))).isCloseTo(0.012, within(1e-9));
    }

    @Test
    void neverEndsWhereAPartStays() {
        DipDecay idle = new DipDecay(new double[] {20, 5}, new double[] {0.1, Double.POSITIVE_INFINITY}, 0);

        assertThat(idle.secondsAbove(4)).isInfinite();
        assertThat(idle.secondsAbove(6)).isFinite();
    }

    @Nested
    class AgainstTolerances {
        @Test
        void itiAllowsAnyDepthForACycle() {
            // A linear 90 falls to a linear 31.449, which is 30 %, within 20 ms
            double half = 0.02 / (Math.log(90 / 31.4485) / Math.log(2));

            assertThat(Tolerance.ITI.left(of(90, half * 0.99), 0)).isEmpty();
            assertThat(Tolerance.ITI.left(of(90, half * 1.01), 0))
                    .hasValueSatisfying(band -> assertThat(band.dipPercent()).isEqualTo(30));
        }

        @Test
        void itiCountsWhatIsLowAlready() {
            assertThat(Tolerance.ITI.left(of(15, 0.4), 0)).isEmpty();
            assertThat(Tolerance.ITI.left(of(15, 1.7), 8))
                    .hasValueSatisfying(band -> assertThat(band.dipPercent()).isEqualTo(20));
        }

        @Test
        void semiAllowsHalfForAFifthOfASecond() {
            assertThat(Tolerance.SEMI_F47.left(of(57.7, 0.2), 0)).isEmpty();
            assertThat(Tolerance.SEMI_F47.left(of(57.8, 0.2), 0))
                    .hasValueSatisfying(band -> assertThat(band.dipPercent()).isEqualTo(50));
        }
    }
}
