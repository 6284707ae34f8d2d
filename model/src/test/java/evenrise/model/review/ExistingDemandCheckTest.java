package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.DemandBasis;
import evenrise.model.project.ExistingDemand;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * NEC 220.87: the maximum demand at 125 percent plus the new load does not exceed the ampacity of the feeder or the rating
 * of the service. Two loads of 30 A and 20 A on phase A, one of 40 A on phase B; 280 A recorded are 350 A at 125 %.
 */
class ExistingDemandCheckTest {
    private static Project project(ExistingDemand demand) {
        Project project = aProject()
                .supply(aSupply().ratedAmps(400))
                .loads(
                        aLoad("old").unswitched().runningAmps(30),
                        aLoad("new").unswitched().runningAmps(20),
                        aLoad("other").unswitched().runningAmps(40))
                .build();
        return project.withSupply(project.supply().withExistingDemand(Optional.of(demand)));
    }

    private static ExistingDemand demand(double amps, String... recorded) {
        return ExistingDemand.builder()
                .maxAmps(amps)
                .basis(DemandBasis.YEAR)
                .recordedLoads(List.of(recorded))
                .build();
    }

    private static List<Remark> remarks(ExistingDemand demand) {
        Plan plan = aPlan().assignments(
                        anAssignment("old").at("P1", 1),
                        anAssignment("new").at("P1", 2),
                        anAssignment("other").at("P1", 3))
                .build();
        return Reviews.of(new ExistingDemandCheck(), project(demand), plan).remarks();
    }

    /** 350 + 50 = 400 A. */
    @Test
    void carriesWhatIsNewUpToTheRating() {
        assertThat(remarks(demand(280))).isEmpty();
    }

    /** 1.25 · 280.1 + 50 = 400.125 A. */
    @Test
    void breaksAboveIt() {
        assertThat(remarks(demand(280.1))).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
            assertThat(remark.message())
                    .contains("280.10 A at 125 %", "new load of 50.00 A", "400.13 A", "carries 400.00 A", "Maybe");
            assertThat(remark.clause()).isEqualTo("NEC 220.87");
        });
    }

    /** What ran while it was recorded is in it: 40 A of phase B are the most that is new. */
    @Test
    void countsOnlyWhatWasNotRecorded() {
        assertThat(remarks(demand(288, "old", "new"))).isEmpty();
        assertThat(remarks(demand(288.1, "old", "new"))).hasSize(1);
        assertThat(remarks(demand(320, "old", "new", "other"))).isEmpty();
    }

    @Test
    void asksTheFeederThatItWasRecordedOn() {
        ExistingDemand small =
                demand(280).with().ampacityAmps(OptionalDouble.of(380)).build();

        assertThat(remarks(small))
                .singleElement()
                .satisfies(remark -> assertThat(remark.limit()).hasValue(380));
    }

    @Test
    void saysWhatThirtyDaysHaveToHold() {
        assertThat(remarks(demand(100).withBasis(DemandBasis.THIRTY_DAYS)))
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.NOTE);
                    assertThat(remark.message()).contains("occupied", "heating and cooling");
                });
    }

    @Test
    void isNotMadeWhereSourcesOffsetTheRecording() {
        assertThat(remarks(demand(100).withOffset(true)))
                .singleElement()
                .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED));
    }

    @Test
    void saysNothingWhereNothingElseIsFed() {
        Project alone = aProject().loads(aLoad("L1").runningAmps(10)).build();

        assertThat(Reviews.of(new ExistingDemandCheck(), alone, aPlan().build()).remarks())
                .isEmpty();
    }
}
