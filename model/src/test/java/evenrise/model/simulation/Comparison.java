package evenrise.model.simulation;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.SharedSource;
import evenrise.model.electrical.source.StepDip;
import java.util.Map;

/** One simulated scene beside what we say of it. */
final class Comparison {
    private final Scene scene;
    private final Wave wave;
    private final Map<Device, Device.Datasheet> datasheets;

    Comparison(Scene scene, Wave wave, Map<Device, Device.Datasheet> datasheets) {
        this.scene = scene;
        this.wave = wave;
        this.datasheets = datasheets;
    }

    Scene scene() {
        return scene;
    }

    Wave wave() {
        return wave;
    }

    /** Sum of the envelopes of what has closed on a phase. */
    double boundAmps(int phase, double seconds) {
        double sum = 0;
        for (Scene.Closing each : scene.closings()) {
            if (each.phase() == phase + 1) {
                sum += datasheets.get(each.device()).envelope().amps(each.closesSeconds(), seconds);
            }
        }
        return sum;
    }

    /**
     * How far the simulated current of a phase exceeds the bound at any instant, in percent of the bound's own peak; negative
     * where it never does. Behind an impedance a pulse is lower but longer, so that its tail may come out on top.
     */
    double greatestExcessPercent() {
        double most = -100;
        double peak = boundPeakAmps();
        for (int phase = 0; phase < scene.phases(); phase++) {
            for (int i = 0; i < wave.seconds().length; i++) {
                double bound = boundAmps(phase, wave.seconds()[i]);
                // Before the first contact closes there is only what leaks past open contacts.
                if (bound > 0) {
                    most = Math.max(most, 100 * (Math.abs(wave.amps()[phase][i]) - bound) / peak);
                }
            }
        }
        return most;
    }

    double simulatedPeakAmps() {
        double most = 0;
        for (int phase = 0; phase < scene.phases(); phase++) {
            most = Math.max(most, wave.peakAmps(phase));
        }
        return most;
    }

    double boundPeakAmps() {
        double most = 0;
        for (int phase = 0; phase < scene.phases(); phase++) {
            for (Scene.Closing each : scene.closings()) {
                most = Math.max(most, boundAmps(phase, each.closesSeconds()));
            }
        }
        return most;
    }

    /** The bound's peak as the source's impedance leaves it. */
    double realisticPeakAmps() {
        return SharedSource.crestAmps(boundPeakAmps(), Circuit.CREST_VOLTS, source());
    }

    /** Deepest drop of a half-cycle's rms voltage below nominal after a closing, in percent. */
    double simulatedDipPercent() {
        double deepest = 0;
        for (Scene.Closing each : scene.closings()) {
            int phase = each.phase() - 1;
            double start = each.closesSeconds();
            for (double from = start; from < start + 0.02; from += 0.0005) {
                deepest = Math.max(deepest, 100 * (230 - wave.rmsVolts(phase, from)) / 230);
            }
        }
        return deepest;
    }

    /** What we say: all that closes at once or still decays, as rms over a half-cycle, times |Z|. */
    double boundDipPercent() {
        double most = 0;
        for (Scene.Closing step : scene.closings()) {
            double amps = 0;
            for (Scene.Closing each : scene.closings()) {
                Device.Datasheet data = datasheets.get(each.device());
                double since = step.closesSeconds() - each.closesSeconds();
                if (each.phase() == step.phase() && since >= -1e-9) {
                    double idle = data.baseAmps() / Math.sqrt(2);
                    amps += idle + (data.dipAmps() - idle) * Math.pow(2, -since / data.halfLifeSeconds());
                }
            }
            most = Math.max(most, StepDip.mostPercent(100 * amps * source().magnitudeOhms() / 230));
        }
        return most;
    }

    private Impedance source() {
        return new Impedance(scene.sourceOhms(), 2 * Math.PI * Circuit.HERTZ * scene.sourceHenry());
    }
}
