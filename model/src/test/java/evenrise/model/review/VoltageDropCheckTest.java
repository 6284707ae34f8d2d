package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import org.junit.jupiter.api.Test;

class VoltageDropCheckTest {
    private static final double HUNDRED_FEET = 30.48;
    private static final Plan FIRST_SLOT =
            aPlan().assignments(anAssignment("L1").at("P1", 1)).build();

    private static LoadBuilder load(double amps) {
        return aLoad("L1")
                .unswitched()
                .runningAmps(amps)
                .circuit(Cabling.circuit(Cabling.cable("12 AWG", HUNDRED_FEET)));
    }

    private static Reviews reviewed(LoadBuilder load, boolean hasFeeder) {
        var panel = aPanel("P1");
        return Reviews.of(
                new VoltageDropCheck(),
                aProject()
                        .electrical(Cabling.NEC)
                        .panels(
                                hasFeeder
                                        ? panel.feeder(Cabling.feeder(Cabling.cable("12 AWG", HUNDRED_FEET), 20))
                                        : panel)
                        .loads(load)
                        .build(),
                FIRST_SLOT);
    }

    @Test
    void givesTheBranchOfAPublishedExample() {
        // 120 V, 10 A, 100 ft of 12 AWG: 3.9999 V
        assertThat(reviewed(load(10), false).figure("L1", "voltage drop of the branch"))
                .isCloseTo(100 * 3.9999 / 120, within(1e-3));
    }

    @Test
    void recommendsThreePercentOfABranch() {
        assertThat(reviewed(load(8.99), false).remarks())
                .extracting(Remark::grade)
                .containsOnly(Grade.NOT_CHECKED);
        assertThat(reviewed(load(9.01), false).remarks()).anySatisfy(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
            assertThat(remark.message()).contains("'L1'", "12 AWG", "30 m", "3.003 %", "3.000 %");
        });
    }

    @Test
    void addsTheFeedersLineAndNeutral() {
        Reviews reviews = reviewed(load(8), true);

        // The one load returns through the feeder's neutral: the feeder drops as much as the branch, but for the angle.
        assertThat(reviews.figure("L1", "voltage drop in all"))
                .isCloseTo(2 * reviews.figure("L1", "voltage drop of the branch"), within(1e-3));
        assertThat(reviews.remarks())
                .anySatisfy(remark -> assertThat(remark.message()).contains("feeder and branch", "5.0 %"));
    }

    @Test
    void letsABalancedFeederDropOnItsLinesAlone() {
        Reviews reviews = Reviews.of(
                new VoltageDropCheck(),
                aProject()
                        .panels(aPanel("P1").feeder(Cabling.feeder(Cabling.cable("12 AWG", HUNDRED_FEET), 20)))
                        .loads(
                                aLoad("L1").unswitched().runningAmps(8),
                                aLoad("L2").unswitched().runningAmps(8),
                                aLoad("L3").unswitched().runningAmps(8))
                        .build(),
                aPlan().assignments(
                                anAssignment("L1").at("P1", 1),
                                anAssignment("L2").at("P1", 3),
                                anAssignment("L3").at("P1", 5))
                        .build());

        // 8 A · 0.2 Ω of 120 V
        assertThat(reviews.figure("P1", "voltage drop of the feeder, phase B")).isCloseTo(1.333, within(1e-3));
    }

    @Test
    void saysWhatItLacks() {
        assertThat(reviewed(aLoad("L1").unswitched(), false).remarks())
                .extracting(Remark::message)
                .anySatisfy(message -> assertThat(message).contains("feeder.cable", "'P1'"))
                .anySatisfy(message -> assertThat(message).contains("circuit.cable", "'L1'"));
    }
}
