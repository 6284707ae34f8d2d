package evenrise.model.electrical;

import static evenrise.model.Fixtures.aLoad;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Loads of one phase, instant by instant: each closes at a time of its own within the tolerance, its idle current is a
 * fundamental with a third harmonic at any angle, of a constant power or of an impedance, its inrush rides on it with any
 * polarity or stands alone at first, and the voltage is any of the band. The envelopes know of none of these draws.
 */
class SimulatedWaveformsTest {
    private static final double HERTZ = 50;
    private static final double TOLERANCE = 0.05;
    private static final VoltageBand BAND = new VoltageBand(0.9, 1.1);

    /** One load as it happens to be. */
    private record Real(
            Load load, double on, double closes, boolean isPower, double angle, double polarity, boolean alone) {
        double amps(double at, double voltage) {
            if (at < closes) {
                return 0;
            }
            double r = load.harmonicRatio();
            double wave = 2 * Math.PI * HERTZ * at;
            double fundamental = Math.sqrt(2) * load.idleAmps() / Math.hypot(1, r) * (isPower ? 1 / voltage : voltage);
            double idle = fundamental * (Math.cos(wave) + r * Math.cos(3 * wave + angle));
            double left = Math.pow(2, -(at - closes) / (load.inrushHalfMillis() / 1000)) * voltage * polarity;
            double base = Math.sqrt(2) * load.idleAmps();
            return alone
                    ? Math.max(Math.abs(idle), Math.abs(load.inrushAmps() * left))
                    : idle + Math.max(0, load.inrushAmps() - base) * left;
        }
    }

    private static Real any(Random random, int number) {
        double idle = 0.5 + 8 * random.nextDouble();
        double on = 0.5 * random.nextInt(8);
        return new Real(
                aLoad("L" + number)
                        .idleAmps(idle)
                        .thirdHarmonic(random.nextBoolean() ? 0 : 0.9 * random.nextDouble())
                        .inrushPeakAmps(idle * (1 + 20 * random.nextDouble()))
                        .inrushHalfMillis(2 + 400 * random.nextDouble() * random.nextDouble())
                        .build(),
                on,
                on + TOLERANCE * (2 * random.nextDouble() - 1),
                random.nextBoolean(),
                2 * Math.PI * random.nextDouble(),
                random.nextInt(3) - 1.0,
                random.nextInt(4) == 0);
    }

    private static double greatest(List<Real> loads, double voltage) {
        double greatest = 0;
        for (Real closing : loads) {
            for (double at = closing.closes(); at < closing.closes() + 0.04; at += 0.000_21) {
                double sum = 0;
                for (Real each : loads) {
                    sum += each.amps(at, voltage);
                }
                greatest = Math.max(greatest, Math.abs(sum));
            }
        }
        return greatest;
    }

    private static double envelopes(List<Real> loads) {
        return PeakInrush.of(loads.stream()
                        .map(each -> new Draw(
                                InrushEnvelope.within(each.load(), TOLERANCE, BAND),
                                List.of(Phase.A),
                                OptionalDouble.of(each.on())))
                        .toList())
                .amps(Phase.A);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void noSumOfWaveformsExceedsTheEnvelopes(long seed) {
        Random random = new Random(seed);
        for (int plant = 0; plant < 20; plant++) {
            List<Real> loads = new ArrayList<>();
            int count = 1 + random.nextInt(12);
            for (int i = 0; i < count; i++) {
                loads.add(any(random, i));
            }
            double voltage = BAND.leastRatio() + (BAND.mostRatio() - BAND.leastRatio()) * random.nextDouble();

            assertThat(greatest(loads, voltage)).isLessThanOrEqualTo(envelopes(loads) + 1e-9);
        }
    }

    /** At 110 % an impedance whose crests meet: what is called a bound at nominal voltage alone is exceeded. */
    @Test
    void exceedsTheEnvelopesAtNominalVoltage() {
        Load load = aLoad("L1")
                .idleAmps(5)
                .thirdHarmonic(0.7)
                .inrushPeakAmps(60)
                .inrushHalfMillis(200)
                .build();
        List<Real> loads = List.of(new Real(load, 0, 0, false, 0, 1, false));
        InrushEnvelope nominal = InrushEnvelope.of(load, TOLERANCE);

        assertThat(greatest(loads, 1.1)).isGreaterThan(nominal.baseAmps() + nominal.excessAmps());
        // (60 − 7.0711)·1.1 + 5·1.9696/0.9 = 58.222 + 10.942 = 69.164 A; drawn are at most 58.222 + 1.1·9.848 = 69.055
        // A
        assertThat(greatest(loads, 1.1)).isGreaterThan(0.99 * envelopes(loads)).isLessThanOrEqualTo(envelopes(loads));
    }
}
