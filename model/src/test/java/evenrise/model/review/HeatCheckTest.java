package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Amplifier;
import evenrise.model.project.Equipment;
import evenrise.model.project.OutputStage;
import evenrise.model.project.Programme;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HeatCheckTest {
    private static Equipment in(String room, double heatPercent, Optional<Amplifier> amplifier) {
        return Equipment.builder()
                .room(room)
                .heatPercent(heatPercent)
                .amplifier(amplifier)
                .build();
    }

    @Test
    void leavesOutWhatGoesToTheLoudspeakers() {
        Amplifier amplifier = Amplifier.builder()
                .ratedOutputWatts(3000)
                .outputStage(OutputStage.LINEAR)
                .idleWatts(115)
                .efficiencyPercent(85)
                .eighthPowerWatts(685)
                .programme(Programme.EIGHTH)
                .build();
        Reviews reviews = Reviews.of(
                new HeatCheck(),
                aProject()
                        .loads(
                                aLoad("amp").unswitched().equipment(in("loft", 100, Optional.of(amplifier))),
                                aLoad("dsp")
                                        .unswitched()
                                        .runningAmps(2)
                                        .idleAmps(1)
                                        .equipment(in("loft", 50, Optional.empty())),
                                aLoad("fan").unswitched())
                        .build(),
                aPlan().build());

        // 685 − 375 = 310 W, and half of 240 W; at idle 115 W and half of 120 W
        assertThat(reviews.figure("loft", "heat at full use", "W")).isCloseTo(430, within(1e-9));
        assertThat(reviews.figure("loft", "heat at full use", "BTU/h")).isCloseTo(1467.22, within(0.01));
        assertThat(reviews.figure("loft", "heat at idle", "W")).isCloseTo(175, within(1e-9));
        assertThat(reviews.remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("equipment.room", "'fan'"))
                .extracting(Remark::grade)
                .isEqualTo(Grade.NOT_CHECKED);
    }
}
