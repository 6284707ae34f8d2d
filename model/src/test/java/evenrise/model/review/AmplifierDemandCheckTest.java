package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Amplifier;
import evenrise.model.project.Equipment;
import evenrise.model.project.OutputStage;
import evenrise.model.project.Programme;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class AmplifierDemandCheckTest {
    private static Amplifier amplifier(OptionalDouble eighthWatts, OptionalDouble thirdWatts, Programme programme) {
        return Amplifier.builder()
                .ratedOutputWatts(3000)
                .outputStage(OutputStage.SWITCHING)
                .idleWatts(115)
                .efficiencyPercent(85)
                .eighthPowerWatts(eighthWatts)
                .thirdPowerWatts(thirdWatts)
                .programme(programme)
                .build();
    }

    private static final Amplifier BY_DATASHEET =
            amplifier(OptionalDouble.of(685), OptionalDouble.of(1440), Programme.EIGHTH);

    private static LoadBuilder load(double runningAmps, double breakerAmps, Amplifier amplifier) {
        return aLoad("amp")
                .amplifier()
                .unswitched()
                .runningAmps(runningAmps)
                .breakerAmps(breakerAmps)
                .equipment(Equipment.builder()
                        .heatPercent(100)
                        .amplifier(amplifier)
                        .build());
    }

    private static Reviews reviewed(LoadBuilder load) {
        return Reviews.of(new AmplifierDemandCheck(), aProject().loads(load).build(), aPlan().build());
    }

    @Test
    void goesByTheDatasheetWhereItSaysSo() {
        Reviews reviews = reviewed(load(12, 20, BY_DATASHEET));

        // 685 W and 1440 W at 120 V
        assertThat(reviews.figure("amp", "current at 1/8 power")).isCloseTo(5.708, within(0.001));
        assertThat(reviews.figure("amp", "current at 1/3 power")).isCloseTo(12, within(0.001));
        assertThat(reviews.remarks()).isEmpty();
    }

    @Test
    void goesByTheOutputStageWhereItDoesNot() {
        Reviews reviews =
                reviewed(load(12, 20, amplifier(OptionalDouble.empty(), OptionalDouble.empty(), Programme.EIGHTH)));

        // 115 W + 375 W/0.85 = 556.2 W at 120 V
        assertThat(reviews.figure("amp", "current at 1/8 power")).isCloseTo(4.635, within(0.001));
    }

    @Test
    void saysThatARunningCurrentIsTooLow() {
        assertThat(reviewed(load(5, 20, BY_DATASHEET)).remarks())
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
                    assertThat(remark.message()).contains("'amp'", "5.71 A", "running_a states 5.00 A", "datasheet");
                });
        assertThat(reviewed(load(5.708, 20, BY_DATASHEET)).remarks()).isEmpty();
    }

    @Test
    void saysThatLimitedProgrammeMayTripTheBreaker() {
        assertThat(reviewed(load(12, 11.9, BY_DATASHEET)).remarks())
                .singleElement()
                .extracting(Remark::message)
                .asString()
                .contains("12.00 A at 1/3", "11.90 A");
        assertThat(reviewed(load(12, 12.01, BY_DATASHEET)).remarks()).isEmpty();
    }

    @Test
    void saysWhatItLacks() {
        assertThat(reviewed(aLoad("amp").amplifier().unswitched()).remarks())
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED);
                    assertThat(remark.message()).contains("needs equipment.amplifier", "'amp'");
                });
    }
}
