package evenrise.model.review;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.SupplyBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Project;
import java.util.List;
import org.junit.jupiter.api.Test;

/** 36 kVA on three phases of 120 V is 100 A; a limit of 150 % is a crest of 212.1 A. */
class UpsLimitCheckTest {
    private static List<Remark> remarks(double peakAmps, double runningAmps) {
        return remarks(peakAmps, runningAmps, aSupply().voltageRange(100, 100));
    }

    private static List<Remark> remarks(double peakAmps, double runningAmps, SupplyBuilder supply) {
        Electrical electrical =
                Electrical.builder().source(Sources.ups(36, 150)).build();
        return Reviews.of(
                        new UpsLimitCheck(),
                        aProject()
                                .supply(supply)
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

    /** 200 A with an idle crest of √2 A: 198.59·1.1 + 1.5713 = 220.02 A at 90 to 110 %. */
    @Test
    void mayLimitAPeakThatIsHigherAtOtherVoltages() {
        assertThat(remarks(200, 10, aSupply())).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
            assertThat(remark.message()).contains("220.02 A", "assumed", "200.00 A at nominal voltage");
        });
        assertThat(remarks(200, 10, aSupply().voltageRange(90, 110)))
                .singleElement()
                .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.BREAKS));
    }

    @Test
    void saysThatAPeakWithoutInrushIsNone() {
        Project project = aProject()
                .electrical(Electrical.builder().source(Sources.ups(36, 150)).build())
                .loads(aLoad("L1").runningAmps(10))
                .build();

        assertThat(Reviews.of(new UpsLimitCheck(), project, aPlan().build()).remarks())
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED);
                    assertThat(remark.message()).contains("inrush_peak_a");
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
