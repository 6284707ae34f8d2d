package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Starts at 4 kHz beside what else flows, with noise, a clamp that rounds to 10 mA, and 50 or 60 Hz. */
class InrushFitTest {
    private static final double RATE = 4000;
    private static final double AT = 0.3;
    private static final double LONG = 1.5;

    interface Wave {
        double amps(double since);
    }

    private static Optional<InrushFit> fit(Wave wave, double hertz, double noise, Random chance) {
        int samples = (int) (LONG * RATE);
        double[] seconds = new double[samples];
        double[] amps = new double[samples];
        for (int i = 0; i < samples; i++) {
            double now = i / RATE;
            double others = 12 * Math.sin(2 * Math.PI * hertz * now) + 3 * Math.sin(6 * Math.PI * hertz * now + 1);
            double read = others + (now < AT ? 0 : wave.amps(now - AT)) + noise * chance.nextGaussian();
            seconds[i] = now;
            amps[i] = Math.round(read * 100) / 100.0;
        }
        return InrushFit.of(seconds, amps, AT + 0.01 * (2 * chance.nextDouble() - 1), 1 / hertz);
    }

    @Test
    void findsPeakHalfLifeAndMomentOfASurgeThatDecays() {
        Random chance = new Random(1);
        for (int plant = 0; plant < 60; plant++) {
            double hertz = plant % 2 == 0 ? 50 : 60;
            double end = 1 + 4 * chance.nextDouble();
            double excess = end * (4 + 10 * chance.nextDouble());
            double half = 0.008 + 0.15 * chance.nextDouble();
            // Closed at its crest, as the envelope has it.
            Wave wave = since -> (end + excess * Math.pow(2, -since / half)) * Math.cos(2 * Math.PI * hertz * since);

            InrushFit found = fit(wave, hertz, 0.02, chance).orElseThrow();

            String which = "plant " + plant + ", half-life " + half;
            assertThat(found.seconds()).as(which).isCloseTo(AT, within(0.01));
            assertThat(found.peakAmps()).as(which).isCloseTo(end + excess, Percentage.withPercentage(5));
            assertThat(found.halfMillis().orElseThrow())
                    .as(which)
                    .isCloseTo(1000 * half, Percentage.withPercentage(15));
        }
    }

    /**
     * A bridge and a capacitor behind a resistance, as most electronics begin: stepped through in 5 µs, so that what is
     * found is held against a circuit and not against the formula that is fitted.
     */
    @Test
    void findsThePeakOfACapacitorThatIsCharged() {
        Random chance = new Random(2);
        for (int plant = 0; plant < 20; plant++) {
            double resistance = 1 + 6 * chance.nextDouble();
            double farad = (100 + 400 * chance.nextDouble()) * 1e-6;
            double load = 300 + 600 * chance.nextDouble();
            double angle = Math.PI * chance.nextDouble();
            double step = 5e-6;
            double[] current = new double[(int) ((LONG - AT) / step) + 2];
            double volts = 0;
            double peak = 0;
            for (int i = 0; i < current.length; i++) {
                double source = 325 * Math.sin(2 * Math.PI * 50 * i * step + angle);
                double through = Math.max(0, Math.abs(source) - volts - 1.4) / resistance;
                volts += step * (through - volts / load) / farad;
                current[i] = Math.signum(source) * through;
                peak = Math.max(peak, through);
            }

            InrushFit found = fit(since -> current[(int) (since / step)], 50, 0.02, chance)
                    .orElseThrow();

            assertThat(found.peakAmps()).as("plant " + plant).isCloseTo(peak, Percentage.withPercentage(5));
            assertThat(found.seconds()).as("plant " + plant).isCloseTo(AT, within(0.01));
        }
    }

    @Test
    void findsNothingWhereNothingBegins() {
        assertThat(fit(since -> 0, 50, 0.02, new Random(3))).isEmpty();
    }

    @Test
    void claimsNoHalfLifeWithoutASurge() {
        InrushFit found = fit(since -> 3 * Math.cos(2 * Math.PI * 50 * since), 50, 0.02, new Random(4))
                .orElseThrow();

        assertThat(found.peakAmps()).isCloseTo(3, within(0.15));
        assertThat(found.halfMillis()).isEmpty();
    }
}
