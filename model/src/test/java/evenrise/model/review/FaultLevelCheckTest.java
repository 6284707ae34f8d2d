package evenrise.model.review;

import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.PanelBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Practice;
import org.junit.jupiter.api.Test;

class FaultLevelCheckTest {
    private static Reviews reviewed(Practice practice, PanelBuilder panel) {
        Electrical electrical = Electrical.builder()
                .practice(practice)
                .source(Sources.transformer(300, 2))
                .build();
        return Reviews.of(
                new FaultLevelCheck(),
                aProject()
                        .supply(aSupply())
                        .electrical(electrical)
                        .panels(panel)
                        .build(),
                aPlan().build());
    }

    @Test
    void takesATenthOffTheImpedanceByNec() {
        // 300 kVA at 207.85 V: 833.3 A · 100/1.8
        assertThat(reviewed(Practice.NEC, aPanel("P1")).figure("supply", "fault current"))
                .isCloseTo(46_296, within(5.0));
    }

    @Test
    void raisesTheVoltageByATenthByIec() {
        // 833.3 A · 100/2 · 1.1
        assertThat(reviewed(Practice.IEC, aPanel("P1")).figure("supply", "fault current"))
                .isCloseTo(45_833, within(5.0));
    }

    @Test
    void fallsAlongTheFeeder() {
        Reviews reviews =
                reviewed(Practice.NEC, aPanel("P1").feeder(Cabling.feeder(Cabling.cable("1/0 AWG", 30.48), 150)));

        double atPanel = reviews.figure("P1", "fault current");
        // |Z| of 100 ft of 1/0: |0.012 + j0.0044| Ω beside 2.59 mΩ of the source
        assertThat(atPanel).isBetween(7_500.0, 9_500.0);
        assertThat(reviews.figure("P1", "fault current to neutral")).isLessThan(atPanel);
    }

    @Test
    void holdsThePanelAgainstItsInterruptingRating() {
        assertThat(reviewed(Practice.NEC, aPanel("P1").interruptingAmps(46_300)).remarks())
                .extracting(Remark::grade)
                .containsOnly(Grade.NOT_CHECKED);
        assertThat(reviewed(Practice.NEC, aPanel("P1").interruptingAmps(42_000)).remarks())
                .anySatisfy(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                    assertThat(remark.clause()).isEqualTo("NEC 110.9");
                    assertThat(remark.message()).contains("'P1'", "46.3 kA", "42.0 kA", "65 kA");
                });
    }

    @Test
    void saysWhatItLacks() {
        assertThat(reviewed(Practice.NEC, aPanel("P1")).remarks())
                .extracting(Remark::message)
                .anySatisfy(message -> assertThat(message).contains("interrupting_a"))
                .anySatisfy(message -> assertThat(message).contains("feeder.cable"));
    }
}
