package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.PanelBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import java.util.List;
import org.junit.jupiter.api.Test;

class ContinuousRatingCheckTest {
    private static PanelBuilder panel() {
        return aPanel("P1").ratedAmps(100);
    }

    private static List<Remark> remarks(Electrical electrical, double supplyFraction, PanelBuilder panel, double amps) {
        return Reviews.of(
                        new ContinuousRatingCheck(),
                        aProject()
                                .supply(aSupply().ratedAmps(400).continuousFraction(supplyFraction))
                                .panels(panel)
                                .loads(aLoad("L1").unswitched().runningAmps(amps))
                                .electrical(electrical)
                                .build(),
                        aPlan().assignments(anAssignment("L1").at("P1", 1)).build())
                .remarks();
    }

    /** 85 A in a panel of 100 A: 1.25·85 = 106.25 A by NEC 215.3; 80 % of 100 A is 80 A. */
    @Test
    void judgesASilentPanelAtEightyPercent() {
        assertThat(remarks(Cabling.NEC, 1, panel(), 85)).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
            assertThat(remark.figure()).hasValue(85);
            assertThat(remark.limit()).hasValue(80);
        });
        assertThat(remarks(Cabling.IEC, 1, panel(), 85))
                .singleElement()
                .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION));
    }

    @Test
    void saysSoWhereEightyPercentIsKept() {
        assertThat(remarks(Cabling.NEC, 0.85, panel(), 80))
                .singleElement()
                .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.NOTE));
    }

    @Test
    void isSilentWhereSomebodySpeaks() {
        assertThat(remarks(Cabling.NEC, 0.8, panel(), 85)).isEmpty();
        assertThat(remarks(Cabling.NEC, 1, panel().with(it -> it.continuousFraction(1)), 85))
                .isEmpty();
        assertThat(remarks(
                        Cabling.NEC,
                        1,
                        panel().feeder(Feeder.builder()
                                .breakerAmps(100)
                                .fullyRated(true)
                                .build()),
                        85))
                .isEmpty();
    }
}
