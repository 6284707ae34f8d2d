package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Device;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.TripCurve;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A branch of C32 trips at once by 10 · 32 = 320 A at the latest. */
class DiscriminationCheckTest {
    private static final LoadBuilder C32 =
            aLoad("L1").unswitched().breakerAmps(32).curve(TripCurve.C);

    private static Feeder feeder(double ratedAmps, double low) {
        return Feeder.builder()
                .device(Device.builder()
                        .ratedAmps(ratedAmps)
                        .instantaneous(new InstantaneousRange(low, 2 * low))
                        .build())
                .build();
    }

    private static List<Remark> said(Feeder feeder, Electrical electrical) {
        return Reviews.of(
                        new DiscriminationCheck(),
                        aProject()
                                .electrical(electrical)
                                .panels(aPanel("P1").feeder(feeder))
                                .loads(C32)
                                .build(),
                        aPlan().assignments(anAssignment("L1").at("P1", 1)).build())
                .remarks();
    }

    private static Electrical utility(double faultAmps) {
        return Cabling.NEC.withSource(java.util.Optional.of(Sources.utility(faultAmps)));
    }

    @Test
    void isLackingWhereBothMayTripAtTheBranchsOwnCurrent() {
        // 63 A · 5 = 315 A
        assertThat(said(feeder(63, 5), Cabling.IEC)).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
            assertThat(remark.message()).contains("320.00 A", "315.00 A");
            assertThat(remark.clause()).contains("60364-5-53");
        });
    }

    @Test
    void isShownUpToTheFeedersOwnTripAndNotBeyond() {
        // 64 A · 5 = 320 A, at the limit; faults are of 5,000 A
        assertThat(said(feeder(64, 5), utility(5000))).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.NOTE);
            assertThat(remark.message()).contains("up to 320.00 A", "5000.00 A", "not shown");
        });
    }

    @Test
    void isShownWhereNoFaultIsSoLarge() {
        // 400 A · 12.5 = 5,000 A
        assertThat(said(feeder(400, 12.6), utility(5000))).isEmpty();
    }

    @Test
    void isNotShownByRatingsAlone() {
        assertThat(said(Feeder.builder().breakerAmps(125).build(), Cabling.NEC))
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED);
                    assertThat(remark.message()).contains("not shown", "'P1'");
                });
    }

    @Test
    void isAskedBetweenFeedersAndTheMainToo() {
        Device main = Device.builder()
                .ratedAmps(400)
                .instantaneous(new InstantaneousRange(5, 10))
                .build();

        // the feeder trips by 10 · 225 = 2,250 A, the main may from 5 · 400 = 2,000 A
        List<Remark> remarks = Reviews.of(
                        new DiscriminationCheck(),
                        aProject()
                                .electrical(Cabling.NEC)
                                .supply(aSupply().with(it -> it.main(main)))
                                .panels(aPanel("P1").feeder(feeder(225, 5)))
                                .loads(C32)
                                .build(),
                        aPlan().assignments(anAssignment("L1").at("P1", 1)).build())
                .remarks();

        assertThat(remarks)
                .filteredOn(remark -> remark.grade() == Grade.EXCEEDS_RECOMMENDATION)
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.place()).isEqualTo("supply");
                    assertThat(remark.message()).contains("2250.00 A", "2000.00 A");
                });
    }
}
