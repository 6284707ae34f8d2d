package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class AmplifierDemandTest {
    /** An independent computation: a Gaussian output voltage, drawn sample by sample, from ideal rails. */
    @Test
    void linearStageDrawsWhatASampledProgrammeDraws() {
        double ratedWatts = 1000;
        double loadOhms = 4;
        double railVolts = Math.sqrt(2 * ratedWatts * loadOhms);
        double sigmaVolts = Math.sqrt(AmplifierDemand.EIGHTH * ratedWatts * loadOhms);
        Random random = new Random(7);
        int samples = 400_000;
        double drawnJoules = 0;
        for (int i = 0; i < samples; i++) {
            drawnJoules += railVolts * Math.abs(sigmaVolts * random.nextGaussian()) / loadOhms;
        }

        double drawn = AmplifierDemand.linearWatts(ratedWatts, AmplifierDemand.EIGHTH, 0);

        assertThat(drawn).isCloseTo(drawnJoules / samples, within(0.005 * drawn));
    }

    @Test
    void linearStageDrawsMoreThanASwitchingOneAtEveryUsualDuty() {
        for (double duty : new double[] {AmplifierDemand.EIGHTH, AmplifierDemand.THIRD}) {
            assertThat(AmplifierDemand.linearWatts(1000, duty, 50))
                    .isGreaterThan(AmplifierDemand.switchingWatts(1000, duty, 50, 0.85));
        }
    }

    @Test
    void silenceDrawsTheIdlePower() {
        assertThat(AmplifierDemand.switchingWatts(1000, 0, 50, 0.85)).isEqualTo(50);
        assertThat(AmplifierDemand.linearWatts(1000, 0, 50)).isEqualTo(50);
    }
}
