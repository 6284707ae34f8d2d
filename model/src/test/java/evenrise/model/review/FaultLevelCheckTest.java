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
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import java.util.List;
import java.util.OptionalDouble;
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
        assertThat(reviewed(Practice.NEC, aPanel("P1")).figure("supply", "greatest fault current"))
                .isCloseTo(46_296, within(5.0));
    }

    @Test
    void raisesTheVoltageByATenthByIec() {
        // 833.3 A · 100/2 · 1.1
        assertThat(reviewed(Practice.IEC, aPanel("P1")).figure("supply", "greatest fault current"))
                .isCloseTo(45_833, within(5.0));
    }

    @Test
    void fallsAlongTheFeeder() {
        Reviews reviews =
                reviewed(Practice.NEC, aPanel("P1").feeder(Cabling.feeder(Cabling.cable("1/0 AWG", 30.48), 150)));

        double atPanel = reviews.figure("P1", "greatest fault current");
        // |Z| of 100 ft of 1/0: |0.012 + j0.0044| Ω beside 2.59 mΩ of the source
        assertThat(atPanel).isBetween(7_500.0, 9_500.0);
        assertThat(reviews.figure("P1", "greatest fault current to neutral")).isLessThan(atPanel);
    }

    /**
     * Source 3·230²·4 %/400 kVA = 15.87 mΩ, X/R 3: 5.019 + j15.056 mΩ. 25 m of 16 mm² at 20 °C: 28.75 + j2.00 mΩ. Together
     * |33.769 + j17.056| = 37.832 mΩ; 1.1·230 V/37.832 mΩ = 6,687.5 A. At 70 °C they would be 5,891 A.
     */
    @Test
    void takesConductorsColdForTheGreatest() {
        assertThat(Reviews.of(new FaultLevelCheck(), sixteen(), aPlan().build()).figure("P", "greatest fault current"))
                .isCloseTo(6687.5, within(1.0));
    }

    /**
     * The loop to neutral at 70 °C: 2·25 m·1.15 Ω/km·1.1965 = 68.80 mΩ, j4.00 mΩ, 68.92 in length. With the source's 15.87
     * mΩ, whose angle is not stated, added as a number: 84.79 mΩ; 0.95·230 V/84.79 mΩ = 2,577 A.
     */
    @Test
    void takesConductorsWarmForTheLeast() {
        assertThat(Reviews.of(new FaultLevelCheck(), sixteen(), aPlan().build())
                        .figure("P", "least fault current to neutral"))
                .isCloseTo(2577, within(2.0));
    }

    @Test
    void holdsTheGreatestAgainstSixKiloampere() {
        assertThat(Reviews.of(new FaultLevelCheck(), sixteen(), aPlan().build()).remarks())
                .anySatisfy(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                    assertThat(remark.message()).contains("'P'", "6.7 kA", "6.0 kA", "20 °C", "breakers of 10 kA");
                });
    }

    private static Project sixteen() {
        return Reviews.read("fault-level-16mm2.project.json");
    }

    @Test
    void holdsThePanelAgainstItsInterruptingRating() {
        assertThat(reviewed(Practice.NEC, aPanel("P1").interruptingAmps(46_300)).remarks())
                .extracting(Remark::grade)
                .containsOnly(Grade.NOT_CHECKED, Grade.NOTE);
        assertThat(reviewed(Practice.NEC, aPanel("P1").interruptingAmps(46_290)).remarks())
                .anySatisfy(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
                    assertThat(remark.clause()).isEqualTo("NEC 110.9");
                    assertThat(remark.message()).contains("'P1'", "46.30 kA", "46.29 kA", "65 kA");
                });
    }

    /** |15.87 mΩ at X/R 3 + cable| gives 6,688 A; as a reactance alone |28.75 + j17.87| = 33.85 mΩ: 7,474 A. */
    @Test
    void saysWhereAnAssumedAngleDecides() {
        Project project = sixteen();
        Panel between = project.panels().get(0).withInterruptingAmps(OptionalDouble.of(7_000));

        Reviews reviews = Reviews.of(new FaultLevelCheck(), project.withPanels(List.of(between)), aPlan().build());

        assertThat(reviews.remarks()).noneMatch(remark -> remark.grade() == Grade.BREAKS);
        assertThat(reviews.remarks()).anySatisfy(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED);
            assertThat(remark.message()).contains("x_over_r", "7.0 kA", "6.7 kA", "7.5 kA");
        });
    }

    /** One phase of 120 V behind |Z|: a fault there and back, 2·|Z|. */
    @Test
    void goesThereAndBackOnOnePhase() {
        Electrical electrical = Electrical.builder()
                .practice(Practice.NEC)
                .source(Sources.utility(10_000))
                .build();
        Reviews reviews = Reviews.of(
                new FaultLevelCheck(),
                aProject()
                        .supply(aSupply().singlePhase())
                        .electrical(electrical)
                        .panels(aPanel("P1").feeder(Cabling.feeder(Cabling.cable("1/0 AWG", 30.48), 150)))
                        .build(),
                aPlan().build());

        // Source 12 mΩ at X/R 5: 2.353 + j11.767; 200 ft of 1/0 at 20 °C: 24·0.8223 + j8.8 = 19.735 + j8.8; |22.09 +
        // j20.57|
        assertThat(reviews.figure("P1", "greatest fault current")).isCloseTo(120 / 0.03018, within(5.0));
    }

    @Test
    void saysWhatItLacks() {
        assertThat(reviewed(Practice.NEC, aPanel("P1")).remarks())
                .extracting(Remark::message)
                .anySatisfy(message -> assertThat(message).contains("interrupting_a"))
                .anySatisfy(message -> assertThat(message).contains("feeder.cable"));
    }
}
