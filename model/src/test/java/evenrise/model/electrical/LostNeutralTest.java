package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LostNeutralTest {
    private static LostNeutral star(PhaseSystem system, double a, double b, double c, double powerFactorOfA) {
        LostNeutral star = new LostNeutral(system);
        star.add(Phase.A, a, Lag.behind(powerFactorOfA));
        star.add(Phase.B, b, Lag.NONE);
        star.add(Phase.C, c, Lag.NONE);
        return star;
    }

    private static double volts(LostNeutral star, Phase phase) {
        return 120 * star.percent(phase).orElseThrow() / 100;
    }

    /**
     * Two resistors in series on 240 V. 144 and 72 Ω (100 and 200 W at 120 V): 240·144/216 = 160 V and 80 V, as in a worked
     * example of an open neutral (studylib.net 5726865). 333.3 and 500 Ω: 240·333.3/833.3 = 96 and 144 V. 20 and 5 A (6 and
     * 24 Ω): 48 and 192 V. 1,500 and 300 W: 40 and 200 V.
     */
    @ParameterizedTest
    @CsvSource({
        "0.8333333333, 1.6666666667, 160, 80",
        "0.36, 0.24, 96, 144",
        "20, 5, 48, 192",
        "12.5, 2.5, 40, 200",
        "7, 7, 120, 120"
    })
    void ofTwoLegsDividesTheirVoltage(double a, double b, double voltsA, double voltsB) {
        LostNeutral star = star(PhaseSystem.SPLIT_PHASE, a, b, 0, 1);

        assertThat(volts(star, Phase.A)).isCloseTo(voltsA, within(1e-6));
        assertThat(volts(star, Phase.B)).isCloseTo(voltsB, within(1e-6));
    }

    /**
     * Star point by Millman's theorem, computed apart from this code. 20 and 5 A on two phases of 208Y/120: 207.846 V divide
     * as 1 to 4. 10 A each and 1 A: the star point is at 51.43 V, opposite to the light phase: 120 + 51.43 V there.
     */
    @ParameterizedTest
    @CsvSource({
        "20, 5, 0, 1, 41.57, 166.28, ",
        "30, 20, 10, 1, 91.65, 124.90, 151.00",
        "10, 10, 1, 1, 104.28, 104.28, 171.43",
        "30, 20, 10, 0.8, 96.61, 111.25, 179.02",
        "10, 0, 5, 1, 69.28, , 138.56",
        "4, 4, 4, 1, 120, 120, 120"
    })
    void ofThreePhasesMovesTheStarPoint(
            double a, double b, double c, double powerFactor, double voltsA, Double voltsB, Double voltsC) {
        LostNeutral star = star(PhaseSystem.THREE_PHASE, a, b, c, powerFactor);

        assertThat(volts(star, Phase.A)).isCloseTo(voltsA, within(0.005));
        if (voltsB != null) {
            assertThat(volts(star, Phase.B)).isCloseTo(voltsB, within(0.005));
        }
        if (voltsC != null) {
            assertThat(volts(star, Phase.C)).isCloseTo(voltsC, within(0.005));
        }
    }

    @Test
    void givesAPhaseWithNextToNothingTheVoltageBetweenPhases() {
        assertThat(LostNeutral.mostPercent(PhaseSystem.SPLIT_PHASE)).isCloseTo(200, within(1e-9));
        assertThat(String.format(Locale.ROOT, "%.1f", LostNeutral.mostPercent(PhaseSystem.THREE_PHASE)))
                .isEqualTo("173.2");
        LostNeutral star = star(PhaseSystem.THREE_PHASE, 100, 0, 0.0001, 1);
        assertThat(star.percent(Phase.C).orElseThrow()).isCloseTo(173.205, within(0.001));
    }

    @Test
    void saysNothingOfOnePhaseNorOfNothing() {
        assertThat(star(PhaseSystem.SINGLE_PHASE, 5, 0, 0, 1).percent(Phase.A)).isEmpty();
        assertThat(new LostNeutral(PhaseSystem.THREE_PHASE).percent(Phase.A)).isEmpty();
    }
}
