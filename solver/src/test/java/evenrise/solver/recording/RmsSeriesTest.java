package evenrise.solver.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import org.junit.jupiter.api.Test;

class RmsSeriesTest {
    private static RmsSeries series(int most) {
        return new RmsSeries(new Phase[] {Phase.B}, 0.02, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, most);
    }

    @Test
    void keepsRmsValuesAsTheyAre() {
        RmsSeries series = series(1000);
        for (int i = 0; i < 200; i++) {
            series.add(i, new double[] {i % 7});
        }

        Recording recording = series.recording();

        assertThat(series.isWave()).isFalse();
        assertThat(series.thinned()).isEqualTo(1);
        assertThat(recording.seconds()).hasSize(200);
        assertThat(recording.amps().get(Phase.B)[13]).isEqualTo(6);
    }

    @Test
    void isThinnedByTwoUntilItFits() {
        RmsSeries series = series(128);
        for (int i = 0; i < 1000; i++) {
            series.add(i, new double[] {i < 500 ? 3 : 4});
        }

        Recording recording = series.recording();

        assertThat(series.thinned()).isEqualTo(8);
        assertThat(recording.seconds().length).isLessThan(128);
        assertThat(recording.intervalSeconds()).isCloseTo(8, within(1e-9));
        assertThat(recording.amps().get(Phase.B)[2]).isCloseTo(3, within(1e-9));
        assertThat(recording.amps().get(Phase.B)[recording.seconds().length - 1])
                .isCloseTo(4, within(1e-9));
    }

    @Test
    void takesShortOnesToo() {
        RmsSeries series = series(128);
        for (int i = 0; i < 20; i++) {
            series.add(i, new double[] {1});
        }

        assertThat(series.recording().seconds()).hasSize(20);
    }
}
