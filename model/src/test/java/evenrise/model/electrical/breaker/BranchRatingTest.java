package evenrise.model.electrical.breaker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Practice;
import evenrise.model.project.TripCurve;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BranchRatingTest {
    @Nested
    class OfALoad {
        /** NEC 210.20(A) and 240.6(A): 125 % of the current, then the next standard rating. */
        @ParameterizedTest(name = "{0} A: {1} A")
        @CsvSource({
            "16, 20", // 20.0
            "16.1, 25", // 20.125
            "24, 30", // 30.0
            "42, 60", // 52.5
            "46.3, 60", // 57.9: 10 kW at 240 V and 0.9
            "180, 225", // 225.0
            "9.26, 15" // 11.6
        })
        void isTheNextStandardRatingAboveFiveFourths(double amps, double rating) {
            assertThat(BranchRating.carrying(Practice.NEC, amps, 0.8)).hasValue(rating);
        }

        /** IEC 60364-4-43 clause 433.1: the rating is no less than the design current. */
        @ParameterizedTest(name = "{0} A: {1} A")
        @CsvSource({"16, 16", "16.1, 20", "20.1, 25", "33, 40"})
        void mayBeTheCurrentItselfByIecPractice(double amps, double rating) {
            assertThat(BranchRating.carrying(Practice.IEC, amps, 1)).hasValue(rating);
        }
    }

    /** NEC table 430.52(C)(1), inverse-time breakers: 250 %, the next standard rating by exception 1. */
    @Nested
    class OfAMotor {
        @ParameterizedTest(name = "{0} A: {1} A")
        @CsvSource({
            "4.6, 15", // 1 hp, 208 V: 11.5
            "10.6, 30", // 3 hp, 208 V: 26.5
            "16.7, 45", // 5 hp, 208 V: 41.75
            "30.8, 80", // 10 hp, 208 V: 77.0
            "22, 60", // 7½ hp, 230 V: 55 (a published example takes 60)
            "28, 70", // 5 hp, 230 V, one phase: 70.0 (published example)
            "124, 350" // 100 hp, 460 V: 310 (published example)
        })
        void isTwoAndAHalfTimesItsFullLoadCurrent(double amps, double rating) {
            assertThat(BranchRating.ofMotor(amps)).hasValue(rating);
        }
    }

    /** NEC table 450.3(B), primary protection alone. */
    @Nested
    class OfATransformer {
        @ParameterizedTest(name = "{0} A: {1} A")
        @CsvSource({
            "36.08, 50", // 30 kVA, 480 V: 45.1
            "54.13, 70", // 45 kVA: 67.7
            "90.21, 125", // 75 kVA: 112.8
            "52.08, 70", // 25 kVA, one phase: 65.1
            "9, 15" // 11.25
        })
        void isFiveFourthsAndTheNextStandardRating(double amps, double rating) {
            assertThat(BranchRating.ofTransformer(amps)).hasValue(rating);
        }

        @Test
        void doesNotGoUpBelowNineAmpere() {
            // 2 kVA at 480 V: 4.17 A · 1.67 = 6.96 A; no breaker is rated so low
            assertThat(BranchRating.ofTransformer(4.17)).isEmpty();
            // 0.5 kVA at 480 V: 1.04 A · 3 = 3.1 A
            assertThat(BranchRating.ofTransformer(1.04)).isEmpty();
            // 8.99 A · 1.67 = 15.01 A
            assertThat(BranchRating.ofTransformer(8.99)).hasValue(15);
        }
    }

    @Test
    void practiceFollowsVoltageAndFrequency() {
        assertThat(Practice.usualAt(120, 60)).isEqualTo(Practice.NEC);
        assertThat(Practice.usualAt(277, 60)).isEqualTo(Practice.NEC);
        assertThat(Practice.usualAt(347, 60)).isEqualTo(Practice.NEC);
        assertThat(Practice.usualAt(230, 50)).isEqualTo(Practice.IEC);
        assertThat(Practice.usualAt(220, 60)).isEqualTo(Practice.IEC);
        assertThat(Practice.usualAt(120, 50)).isEqualTo(Practice.IEC);
    }

    /** NEC 210.20(A) and 215.3: 125 % of 16 A is 20 A, unless it flows for less than three hours or the device carries all. */
    @Test
    void ofAContinuousLoadIsFiveFourths() {
        assertThat(ContinuousLoad.necAmps(16, true, false)).isEqualTo(20);
        assertThat(ContinuousLoad.necAmps(16, false, false)).isEqualTo(16);
        assertThat(ContinuousLoad.necAmps(16, true, true)).isEqualTo(16);
        assertThat(ContinuousLoad.necAmps(16, false, true)).isEqualTo(16);
    }

    /** IEC 60898-1: 1.13 and 1.45; UL 489: 1 and 1.35. */
    @Test
    void ofABreakerHoldsAndTripsByItsPractice() {
        assertThat(ConventionalCurrents.of(Practice.IEC)).isEqualTo(new ConventionalCurrents(1.13, 1.45));
        assertThat(ConventionalCurrents.of(Practice.NEC)).isEqualTo(new ConventionalCurrents(1, 1.35));
    }

    /** NEC 240.6(A) lists 10 A since 2023, IEC 60898-1 8 A; few make them, so neither is proposed. */
    @Test
    void hardlyMadeAreStandardButNotProposed() {
        assertThat(StandardRatings.isStandard(Practice.NEC, 10)).isTrue();
        assertThat(StandardRatings.isStandard(Practice.NEC, 16)).isFalse();
        assertThat(StandardRatings.isStandard(Practice.IEC, 16)).isTrue();
        assertThat(StandardRatings.isStandard(Practice.IEC, 15)).isFalse();
        assertThat(StandardRatings.atLeast(Practice.NEC, 4)).hasValue(15);
        assertThat(StandardRatings.atLeast(Practice.IEC, 6.1)).hasValue(10);
        assertThat(StandardRatings.atMost(Practice.NEC, 12)).isEmpty();
    }

    /** 16 A are carried by 16 A and 80 % of 20 A, whatever the last digit of a sum says. */
    @Test
    void standsADigitOfASum() {
        assertThat(BranchRating.carrying(Practice.IEC, 0.1 * 160.0000000001, 1)).hasValue(16);
        assertThat(BranchRating.ofMotor(6.0000000001)).hasValue(15);
        assertThat(BranchRating.ofTransformer(16.0000000001)).hasValue(20);
        // 1.67 · 8.982035928 = 14.99999999976
        assertThat(BranchRating.ofTransformer(8.982035928)).hasValue(15);
    }

    /** NEC 240.6(A), IEC 60898-1: a rating is at most itself, and above the last there is none. */
    @Test
    void standardRatingsIncludeThemselves() {
        assertThat(StandardRatings.atMost(Practice.NEC, 175)).hasValue(175);
        assertThat(StandardRatings.atMost(Practice.NEC, 174.9)).hasValue(150);
        assertThat(StandardRatings.atMost(Practice.NEC, 14.9)).isEmpty();
        assertThat(StandardRatings.atLeast(Practice.NEC, 6000)).hasValue(6000);
        assertThat(StandardRatings.atLeast(Practice.NEC, 6000.1)).isEmpty();
        assertThat(StandardRatings.atLeast(Practice.IEC, 125)).hasValue(125);
        assertThat(StandardRatings.atMost(Practice.IEC, 9.9)).hasValue(6);
    }

    /** 125 % of 12 A is 15 A, of 16 A 20 A: standard ratings, which need not be exceeded (NEC 450.3(B)). */
    @Test
    void ofATransformerIsNoMoreWhereFiveFourthsAreStandard() {
        assertThat(BranchRating.ofTransformer(12)).hasValue(15);
        assertThat(BranchRating.ofTransformer(16)).hasValue(20);
    }

    /** IEC 60898-1: B 3–5, C 5–10, D 10–20; an adjustable trip 30 % below to 40 % above its setting (from memory). */
    @Test
    void tripsWithinItsBand() {
        assertThat(InstantaneousBand.of(TripCurve.B)).isEqualTo(new InstantaneousBand(3, 5));
        assertThat(InstantaneousBand.of(TripCurve.C)).isEqualTo(new InstantaneousBand(5, 10));
        assertThat(InstantaneousBand.of(TripCurve.D)).isEqualTo(new InstantaneousBand(10, 20));
        assertThat(InstantaneousBand.adjustable(10)).isEqualTo(new InstantaneousBand(7, 14));
    }

    /**
     * A crest of 141.42 A is 100 A of a sine, and no pulse counts for more. A pulse of 1000 A that halves every 0.5 ms, at 50
     * Hz: τ = 0.72135 ms, ∫i²dt = 10⁶·τ/2·(1 − 9.1·10⁻¹³) = 360.67 A²s over 10 ms: √36,067 = 189.9 A.
     */
    @Test
    void countsAShortPulseForLess() {
        assertThat(TripEquivalent.sineAmps(141.421356)).isCloseTo(100, within(1e-6));
        assertThat(TripEquivalent.pulseAmps(141.421356, 10, 50)).isCloseTo(100, within(1e-6));
        assertThat(TripEquivalent.pulseAmps(1000, 0.0005, 50)).isCloseTo(189.9, within(0.05));
        // halved every 5 ms its square is a sixteenth after 10 ms: 10⁶·7.2135 ms/2·15/16 = 3,381.3 A²s, √338,130
        assertThat(TripEquivalent.pulseAmps(1000, 0.005, 50)).isCloseTo(581.5, within(0.05));
        // 10 A rms stay, 1000 A above their crest of 14.142 A
        assertThat(TripEquivalent.inrushAmps(10, 1014.142, 0.0005, 50)).isCloseTo(199.9, within(0.05));
    }
}
