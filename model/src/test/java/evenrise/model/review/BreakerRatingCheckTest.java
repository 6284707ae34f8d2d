package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BreakerRatingCheckTest {
    private static List<Remark> remarks(Electrical electrical, double breakerAmps, LoadBuilder load) {
        return Reviews.of(
                        new BreakerRatingCheck(),
                        aProject()
                                .electrical(electrical)
                                .loads(load.unswitched().breakerAmps(breakerAmps))
                                .build(),
                        aPlan().build())
                .remarks();
    }

    @Nested
    class ByNec {
        @Test
        void wantsAQuarterMoreForAContinuousLoad() {
            assertThat(remarks(Cabling.NEC, 20, aLoad("L1").runningAmps(16))).isEmpty();
            assertThat(remarks(Cabling.NEC, 20, aLoad("L1").runningAmps(16.01)))
                    .singleElement()
                    .satisfies(remark -> {
                        assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                        assertThat(remark.clause()).isEqualTo("NEC 210.20(A)");
                        assertThat(remark.message()).contains("'L1'", "16.01 A", "20.01 A", "20.00 A", "25.00 A");
                    });
        }

        @Test
        void wantsNoMoreThanTheLoadOfADeviceThatCarriesItsWholeRating() {
            assertThat(remarks(Cabling.NEC, 20, aLoad("L1").runningAmps(20).circuit(Cabling.bare(true, true))))
                    .isEmpty();
        }

        @Test
        void wantsNoMoreThanTheLoadWhereItRunsShortly() {
            assertThat(remarks(Cabling.NEC, 20, aLoad("L1").runningAmps(20).circuit(Cabling.bare(false, false))))
                    .isEmpty();
        }

        @Test
        void namesTheNextStandardRating() {
            assertThat(remarks(Cabling.NEC, 32, aLoad("L1").runningAmps(1)))
                    .singleElement()
                    .extracting(Remark::message)
                    .asString()
                    .contains("32.00 A", "no standard rating", "35.00 A");
        }
    }

    @Nested
    class ByIec {
        @Test
        void wantsTheLoadItself() {
            assertThat(remarks(Cabling.IEC, 16, aLoad("L1").runningAmps(16))).isEmpty();
            assertThat(remarks(Cabling.IEC, 16, aLoad("L1").runningAmps(16.01)))
                    .singleElement()
                    .extracting(Remark::clause)
                    .isEqualTo("IEC 60364-4-43 clause 433.1");
        }

        @Test
        void saysWhenItTripsBeforeLong() {
            assertThat(remarks(Cabling.IEC, 16, aLoad("L1").runningAmps(23.2)))
                    .singleElement()
                    .extracting(Remark::message)
                    .asString()
                    .contains("conventional time");
            assertThat(remarks(Cabling.IEC, 16, aLoad("L1").runningAmps(23.1)))
                    .singleElement()
                    .extracting(Remark::message)
                    .asString()
                    .doesNotContain("conventional time");
        }
    }

    /** NEC 240.6(A) of 2023 has 10 A, IEC 60898-1 has 8 A; neither is proposed to anyone. */
    @Test
    void takesTheSmallStandardRatingsForWhatTheyAre() {
        assertThat(remarks(Cabling.NEC, 10, aLoad("L1").runningAmps(1))).isEmpty();
        assertThat(remarks(Cabling.IEC, 8, aLoad("L1").runningAmps(1))).isEmpty();
        assertThat(remarks(Cabling.NEC, 9, aLoad("L1").runningAmps(1)))
                .singleElement()
                .extracting(Remark::message)
                .asString()
                .contains("15.00 A");
        assertThat(remarks(Cabling.IEC, 7, aLoad("L1").runningAmps(1)))
                .singleElement()
                .extracting(Remark::message)
                .asString()
                .contains("10.00 A");
    }

    @Test
    void saysThatItLacksAPractice() {
        Electrical none = Electrical.UNKNOWN;

        assertThat(remarks(none, 20, aLoad("L1")))
                .singleElement()
                .extracting(Remark::grade)
                .isEqualTo(Grade.NOT_CHECKED);
    }
}
