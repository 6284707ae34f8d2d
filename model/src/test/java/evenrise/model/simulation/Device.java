package evenrise.model.simulation;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.breaker.TripEquivalent;
import java.io.IOException;
import java.nio.file.Path;

/**
 * A kind of load with its datasheet, as a maker would find it: the load alone on a stiff source, closed at the worst point
 * of the wave. The peak is what was seen; the half-life is the least that keeps every later crest under the envelope; the
 * idle current is the steady crest over √2, so that the base covers the pulses of a rectifier.
 */
enum Device {
    /** Charges through 6 Ω within a few milliseconds. */
    AMPLIFIER(0.005) {
        @Override
        void add(Circuit circuit, int phase, double closesSeconds) {
            circuit.rectifier(phase, closesSeconds, 6, 680e-6, 3000);
        }
    },
    /** Small and quick: 12 Ω, 150 µF. */
    PROCESSOR(0.005) {
        @Override
        void add(Circuit circuit, int phase, double closesSeconds) {
            circuit.rectifier(phase, closesSeconds, 12, 150e-6, 5000);
        }
    },
    /** Saturates for several cycles: winding 1.2 Ω, remanence 0.6 of its flux in service. */
    TRANSFORMER(0) {
        @Override
        void add(Circuit circuit, int phase, double closesSeconds) {
            circuit.transformer(phase, closesSeconds, 1.2, 0.3, 0.6);
        }
    };

    private static final double ALONE_SECONDS = 1.2;

    /** Part of the peak below which a crest belongs to the steady state. */
    private static final double STEADY_RATIO = 0.02;

    /** From a zero crossing upwards to the worst point of the wave. */
    private final double worstSeconds;

    Device(double worstSeconds) {
        this.worstSeconds = worstSeconds;
    }

    abstract void add(Circuit circuit, int phase, double closesSeconds);

    /** The instant near {@code seconds} at which phase {@code phase} is at this load's worst point. */
    double worstAt(int phase, double seconds) {
        double period = 1 / Circuit.HERTZ;
        double shift = (phase - 1) * period / 3;
        return Math.round(seconds / period) * period + worstSeconds + shift;
    }

    /** @param baseAmps crest of the idle current */
    record Datasheet(double peakAmps, double baseAmps, double halfLifeSeconds) {
        InrushEnvelope envelope() {
            return new InrushEnvelope(baseAmps, Math.max(0, peakAmps - baseAmps), halfLifeSeconds, 0);
        }

        /** What the load counts for as a step of rms current in a dip. */
        double dipAmps() {
            return TripEquivalent.pulseAmps(peakAmps - baseAmps, halfLifeSeconds, Circuit.HERTZ)
                    + baseAmps / Math.sqrt(2);
        }
    }

    Datasheet datasheet(Path folder) throws IOException, InterruptedException {
        double closes = worstAt(1, 0.1);
        Circuit alone = new Circuit(name().toLowerCase(java.util.Locale.ROOT) + " alone", 1, 0, 0, 0);
        add(alone, 1, closes);
        Wave wave = Wave.of(alone, ALONE_SECONDS, folder);
        double peak = wave.peakAmps(0);
        double base = wave.peakAmps(0, ALONE_SECONDS - 0.1) + STEADY_RATIO * peak;
        double peakAt = peakAt(wave, peak);
        double half = 1e-4;
        for (int i = 0; i < wave.seconds().length; i++) {
            double since = wave.seconds()[i] - peakAt;
            double amps = Math.abs(wave.amps()[0][i]);
            if (since > 0 && amps > base) {
                half = Math.max(half, since / (Math.log((peak - base) / (amps - base)) / Math.log(2)));
            }
        }
        // The envelope begins when the contact closes, the peak comes a little later.
        double lift = Math.pow(2, (peakAt - closes) / half);
        return new Datasheet(base + (peak - base) * lift, base, half);
    }

    private static double peakAt(Wave wave, double peak) {
        for (int i = 0; i < wave.seconds().length; i++) {
            if (Math.abs(wave.amps()[0][i]) == peak) {
                return wave.seconds()[i];
            }
        }
        throw new IllegalStateException();
    }
}
