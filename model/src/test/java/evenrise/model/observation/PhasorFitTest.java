package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Twenty ampere to which two loads come, one with a surge at another angle: phasors added here by hand, with noise. */
class PhasorFitTest {
    private static final double SIGMA = 0.02;
    private static final double HALF = 0.04;

    private final double[] seconds = new double[60];
    private final double[] amps = new double[60];

    @BeforeEach
    void record() {
        Random chance = new Random(3);
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = -0.395 + 0.02 * i;
            double real = 20;
            double imaginary = 0;
            if (seconds[i] > 0) {
                double current = 2 + 30 * Math.pow(2, -seconds[i] / HALF);
                real += current * Math.cos(0.3);
                imaginary += current * Math.sin(0.3);
            }
            if (seconds[i] > 0.3) {
                real += 1;
            }
            amps[i] = Math.hypot(real, imaginary) + SIGMA * chance.nextGaussian();
        }
    }

    private static PhasorFit.Part surging(double amps, double spread) {
        return new PhasorFit.Part(0, amps, spread, 25, 20, 0.05, 0.3, 0.2);
    }

    private static PhasorFit.Part plain(double amps, double spread) {
        return new PhasorFit.Part(0.3, amps, spread, 0, 0.3, 0.01, 0.3, 0);
    }

    private PhasorFit fit(PhasorFit.Part... parts) {
        return new PhasorFit(seconds, amps, SIGMA, amps[0], new ArrayList<>(List.of(parts)));
    }

    @Test
    void leavesNoiseAloneWhereEverythingIsKnownAboutAsItIs() {
        assertThat(fit(surging(2.1, 0.25), plain(1.05, 0.12)).perSample()).isBetween(0.5, 1.3);
    }

    @Test
    void costsMuchWhereALoadIsMissingThatIsThere() {
        double known = fit(surging(2.1, 0.25), plain(1.05, 0.12)).cost();

        assertThat(fit(surging(2.1, 0.25)).cost()).isGreaterThan(known + 100);
    }

    @Test
    void costsMuchWhereALoadDrawsFourTimesWhatIsKnownOfIt() {
        double known = fit(surging(2.1, 0.25), plain(1.05, 0.12)).cost();

        assertThat(fit(surging(2.1, 0.25), plain(0.25, 0.03)).cost()).isGreaterThan(known + 100);
    }

    @Test
    void gainsLittleWhereALoadThatIsAsKnownMayBeAnything() {
        double known = fit(surging(2.1, 0.25), plain(1.05, 0.12)).cost();

        assertThat(fit(surging(2.1, 0.25), plain(1.05, 10)).cost()).isBetween(known - 6, known + 0.1);
    }
}
