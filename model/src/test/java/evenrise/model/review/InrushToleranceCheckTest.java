package evenrise.model.review;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.SupplyBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** One load of 4 A idle that peaks at 80 A, r = 0.4: at ±10 % 74.343·1.1 + 4·1.8383/0.9 = 81.777 + 8.170 = 89.95 A. */
class InrushToleranceCheckTest {
    private static Reviews review(SupplyBuilder supply, LoadBuilder load) {
        return Reviews.of(
                new InrushToleranceCheck(),
                aProject().supply(supply).boards(aBoard("B1")).loads(load).build(),
                aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1)).build());
    }

    private static LoadBuilder rectifier() {
        return aLoad("L1").runningAmps(8).idleAmps(4).inrushPeakAmps(80).thirdHarmonic(0.4);
    }

    private static List<Remark> remarks(SupplyBuilder supply, LoadBuilder load) {
        return review(supply, load).remarks();
    }

    @Nested
    class AgainstTheLimit {
        @Test
        void keepsALimitAboveThePeakOverTheRange() {
            assertThat(remarks(aSupply().voltageRange(90, 110).inrushLimitAmps(89.96), rectifier()))
                    .isEmpty();
        }

        @Test
        void breaksALimitBelowItWhereTheVoltagesAreStated() {
            assertThat(remarks(aSupply().voltageRange(90, 110).inrushLimitAmps(89.9), rectifier()))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                        assertThat(remark.place()).isEqualTo("supply");
                        assertThat(remark.figure().orElseThrow()).isCloseTo(89.95, within(0.005));
                        assertThat(remark.message())
                                .contains("89.95 A", "90.0 % to 110.0 %", "80.00 A", "89.90 A", "supply.voltage_range");
                    });
        }

        @Test
        void exceedsARecommendationWhereTheyAreAssumed() {
            assertThat(remarks(aSupply().inrushLimitAmps(89.9), rectifier()))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                        assertThat(remark.message()).contains("assumed", "EN 50160");
                    });
        }

        /** At nominal voltage the crest alone makes it 74.343 + 7.353 = 81.70 A. */
        @Test
        void breaksWhereTheStatedCrestAloneExceedsIt() {
            assertThat(remarks(aSupply().inrushLimitAmps(81.6), rectifier()))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.BREAKS));
            assertThat(remarks(aSupply().inrushLimitAmps(81.8), rectifier()))
                    .singleElement()
                    .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION));
        }

        /** A limit in proportion: 89.9·80/89.947 = 79.96 A. */
        @Test
        void namesTheLimitToPlanWith() {
            assertThat(remarks(aSupply().voltageRange(90, 110).inrushLimitAmps(89.9), rectifier())
                            .get(0)
                            .message())
                    .contains("an inrush limit of 79.96 A");
        }
    }

    @Nested
    class WhatIsNotStated {
        @Test
        void namesLoadsWithoutInrush() {
            assertThat(remarks(aSupply(), aLoad("L1").thirdHarmonic(0)))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED);
                        assertThat(remark.message()).contains("inrush_peak_a", "'L1'");
                    });
        }

        @Test
        void takesTheCrestOfTheIdleCurrentAsStated() {
            assertThat(remarks(
                            aSupply(),
                            aLoad("L1")
                                    .idleAmps(2)
                                    .inrushPeakAmps(2 * Math.sqrt(2))
                                    .thirdHarmonic(0)))
                    .isEmpty();
        }

        @Test
        void namesLoadsWithoutAWaveform() {
            assertThat(remarks(aSupply(), aLoad("L1").inrushPeakAmps(80)))
                    .singleElement()
                    .satisfies(
                            remark -> assertThat(remark.message()).contains("crest_factor or third_harmonic", "'L1'"));
        }

        @Test
        void asksNoWaveformOfWhatIdlesAtNothing() {
            assertThat(remarks(aSupply(), aLoad("L1").idleAmps(0).inrushPeakAmps(80)))
                    .isEmpty();
        }
    }

    @Test
    void givesThePeakOfEveryNode() {
        Reviews reviews = review(aSupply().voltageRange(90, 110), rectifier());

        assertThat(reviews.figure("supply", "peak inrush over the voltage range"))
                .isCloseTo(89.95, within(0.005));
        assertThat(reviews.figure("P1", "peak inrush over the voltage range")).isCloseTo(89.95, within(0.005));
    }
}
