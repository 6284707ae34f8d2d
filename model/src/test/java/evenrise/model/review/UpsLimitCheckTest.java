package evenrise.model.review;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import java.util.List;
import org.junit.jupiter.api.Test;

/** 36 kVA on three phases of 120 V is 100 A; a limit of 150 % is a crest of 212.1 A. */
class UpsLimitCheckTest {
    private static List<Remark> remarks(double peakAmps, double runningAmps) {
        Electrical electrical =
                Electrical.builder().source(Sources.ups(36, 150)).build();
        return Reviews.of(
                        new UpsLimitCheck(),
                        aProject()
                                .electrical(electrical)
                                .boards(aBoard("B1"))
                                .loads(aLoad("L1")
                                        .runningAmps(runningAmps)
                                        .idleAmps(1)
                                        .inrushPeakAmps(peakAmps))
                                .build(),
                        aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1))
                                .build())
                .remarks();
    }

    @Test
    void carriesAPeakUpToItsLimit() {
        assertThat(remarks(212, 10)).isEmpty();
    }

    @Test
    void limitsAHigherPeak() {
        assertThat(remarks(213, 10)).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
            assertThat(remark.message()).contains("213.00 A", "212.13 A", "bypass");
        });
    }

    @Test
    void isOverloadedAboveItsRating() {
        assertThat(remarks(200, 100)).isEmpty();
        assertThat(remarks(200, 100.1))
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("100.10 A"));
    }
}
