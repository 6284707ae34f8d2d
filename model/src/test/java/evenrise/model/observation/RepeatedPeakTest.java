package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class RepeatedPeakTest {
    private static RepeatedPeak peak(double stated, double... peaks) {
        return RepeatedPeak.of("amp", Phase.A, peaks, OptionalDouble.of(stated));
    }

    /** Mean 100 A, deviation 10 A, Student's t of two degrees 2.920: 100 + 2.920 · 10 · √(4/3) A. */
    @Test
    void saysWhatOneMoreStaysBelow() {
        assertThat(peak(140, 90, 100, 110).nextAmps().orElseThrow())
                .isCloseTo(100 + 2.920 * 10 * Math.sqrt(4 / 3.0), within(1e-9));
    }

    @Test
    void saysNothingOfOneMoreBelowThreeClosings() {
        assertThat(peak(140, 90, 100).nextAmps()).isEmpty();
    }

    @Test
    void isOverWhereOneWasAndMayBeWhereOneMoreMay() {
        assertThat(peak(109, 90, 110)).satisfies(each -> {
            assertThat(each.isOver()).isTrue();
            assertThat(each.mayBeOver()).isTrue();
        });
        assertThat(peak(130, 90, 100, 110)).satisfies(each -> {
            assertThat(each.isOver()).isFalse();
            assertThat(each.mayBeOver()).isTrue();
        });
        assertThat(peak(140, 90, 100, 110).mayBeOver()).isFalse();
        assertThat(peak(110, 90, 110).isOver()).isFalse();
    }

    @Test
    void isNeverOverWhereNothingIsStated() {
        assertThat(RepeatedPeak.of("amp", Phase.A, new double[] {90, 100, 110}, OptionalDouble.empty())
                        .mayBeOver())
                .isFalse();
    }
}
