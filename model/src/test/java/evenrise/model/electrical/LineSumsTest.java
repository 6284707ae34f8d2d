package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** With r = 0.75, 13 A rms are 10.4 A of fundamental and 7.8 A of third harmonic: 13 = 10.4·√(1 + 0.75²). */
class LineSumsTest {
    private static final List<Phase> A = List.of(Phase.A);
    private static final List<Phase> A_AND_B = List.of(Phase.A, Phase.B);

    @Nested
    class ByMagnitude {
        @Test
        void splitsACurrentIntoFundamentalAndThirdHarmonic() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(A, 13, Lag.NONE, 0.75);

            assertThat(sums.runningAmps(Phase.A)).isEqualTo(13);
            assertThat(sums.thirdAmps(Phase.A)).isCloseTo(7.8, within(1e-12));
            assertThat(sums.meteredAmps(Phase.A)).isCloseTo(13, within(1e-12));
            assertThat(sums.runningAmps(Phase.B)).isZero();
        }

        @Test
        void addsWhateverTheAngles() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(A, 10, Lag.NONE, 0);
            sums.add(A_AND_B, 5, Lag.behind(0.8), 0);

            assertThat(sums.runningAmps(Phase.A)).isEqualTo(15);
            assertThat(sums.runningAmps(Phase.B)).isEqualTo(5);
        }
    }

    @Nested
    class ByPhasor {
        /**
         * 10 A to neutral on A at 0°, and 10 A between A and B, whose voltage stands at +30°: in A |10 + 10∠30°| =
         * 20·cos 15° = 19.3185 A, in B 10 A.
         */
        @Test
        void takesALoadBetweenLinesAtTheVoltageBetweenThem() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(A, 10, Lag.NONE, 0);
            sums.add(A_AND_B, 10, Lag.NONE, 0);

            assertThat(sums.meteredAmps(Phase.A)).isCloseTo(20 * Math.cos(Math.PI / 12), within(1e-9));
            assertThat(sums.meteredAmps(Phase.B)).isCloseTo(10, within(1e-9));
        }

        /**
         * The current comes back in B: 10 A between the lines at −150° there, 10 A to neutral on B at −120°: 2·10·cos 15°.
         */
        @Test
        void letsItFlowBackInTheSecondPole() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(A_AND_B, 10, Lag.NONE, 0);
            sums.add(List.of(Phase.B), 10, Lag.NONE, 0);

            assertThat(sums.meteredAmps(Phase.B)).isCloseTo(20 * Math.cos(Math.PI / 12), within(1e-9));
        }

        /** At power factor 0.866 a load between A and B lags to 0° in A, so that it adds in full: 20 A; in B to −180°. */
        @Test
        void turnsItBackByItsLag() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(A, 10, Lag.NONE, 0);
            sums.add(A_AND_B, 10, Lag.behind(Math.cos(Math.PI / 6)), 0);

            assertThat(sums.meteredAmps(Phase.A)).isCloseTo(20, within(1e-9));
        }

        /** 10 A at unity and 10 A at power factor 0.5, 60° behind: 20·cos 30°. */
        @Test
        void turnsALoadToNeutralBackByItsLag() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(List.of(Phase.C), 10, Lag.NONE, 0);
            sums.add(List.of(Phase.C), 10, Lag.behind(0.5), 0);

            assertThat(sums.meteredAmps(Phase.C)).isCloseTo(20 * Math.cos(Math.PI / 6), within(1e-9));
        }

        /** Three equal poles are positive sequence alone. */
        @Test
        void takesThreePolesToNeutral() {
            LineSums sums = new LineSums(PhaseSystem.THREE_PHASE);
            sums.add(List.of(Phase.values()), 10, Lag.behind(0.8), 0);

            assertThat(sums.components().positive().length()).isCloseTo(10, within(1e-9));
            assertThat(sums.components().negative().length()).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void ofTwoPointsAddInEveryWay() {
        LineSums one = new LineSums(PhaseSystem.THREE_PHASE);
        one.add(List.of(Phase.values()), 13, Lag.NONE, 0.75);
        LineSums other = new LineSums(PhaseSystem.THREE_PHASE);
        other.add(List.of(Phase.values()), 26, Lag.NONE, 0.75);

        one.add(other);

        for (Phase phase : Phase.values()) {
            assertThat(one.runningAmps(phase)).isEqualTo(39);
            assertThat(one.thirdAmps(phase)).isCloseTo(23.4, within(1e-9));
            assertThat(one.meteredAmps(phase)).isCloseTo(39, within(1e-9));
        }
    }
}
