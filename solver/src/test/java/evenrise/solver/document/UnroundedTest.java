package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class UnroundedTest {
    /** Preferred ratings below ten amperes have fractions (IEC 60898-1, from memory): 6.3 A is no 6 A. */
    @Test
    void aBreakersRatingIsNotRounded() {
        assertThat(Unrounded.breaker(2, 6.3)).isEqualTo("6.3/2");
        assertThat(Unrounded.breaker(1, 20)).isEqualTo("20/1");
        assertThat(Unrounded.amps(2.5)).isEqualTo("2.5 A");
    }

    @Test
    void secondsHaveAThirdDecimalOnlyWhereItTellsSomething() {
        assertThat(Unrounded.seconds(0.125)).isEqualTo("0.125");
        assertThat(Unrounded.seconds(33.75)).isEqualTo("33.75");
        assertThat(Unrounded.seconds(0.1 + 0.2)).isEqualTo("0.30");
    }
}
