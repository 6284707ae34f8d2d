package evenrise.solver.recording;

import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Keeps the samples of a wave about some moments, and nothing of what lies between. */
final class WaveWindows implements SampleSink {
    /** More are not kept: some hundred starts at ten thousand samples a second. */
    private static final int MOST_SAMPLES = 4_000_000;

    private final Phase[] phases;
    private final List<Window> windows = new ArrayList<>();
    private int firstOpen;
    private int kept;

    private static final class Window {
        private final double from;
        private final double to;
        private double[] seconds = new double[256];
        private double[][] amps;
        private int count;

        Window(double from, double to, int phases) {
            this.from = from;
            this.to = to;
            this.amps = new double[phases][256];
        }

        void add(double moment, double[] values) {
            if (count == seconds.length) {
                seconds = Arrays.copyOf(seconds, 2 * count);
                for (int i = 0; i < amps.length; i++) {
                    amps[i] = Arrays.copyOf(amps[i], 2 * count);
                }
            }
            seconds[count] = moment;
            for (int i = 0; i < amps.length; i++) {
                amps[i][count] = values[i];
            }
            count++;
        }
    }

    /** @param spans from and to, each list entry by its beginning, rising */
    WaveWindows(Phase[] phases, List<double[]> spans) {
        this.phases = phases.clone();
        spans.forEach(each -> windows.add(new Window(each[0], each[1], phases.length)));
    }

    @Override
    public void add(double moment, double[] values) {
        while (firstOpen < windows.size() && windows.get(firstOpen).to < moment) {
            firstOpen++;
        }
        for (int i = firstOpen; i < windows.size() && windows.get(i).from <= moment && kept < MOST_SAMPLES; i++) {
            if (moment <= windows.get(i).to) {
                windows.get(i).add(moment, values);
                kept++;
            }
        }
    }

    /** In the order of the spans. */
    List<RecordedWave> waves() {
        List<RecordedWave> waves = new ArrayList<>();
        for (Window each : windows) {
            Map<Phase, double[]> amps = new EnumMap<>(Phase.class);
            for (int i = 0; i < phases.length; i++) {
                amps.put(phases[i], Arrays.copyOf(each.amps[i], each.count));
            }
            waves.add(new RecordedWave(Arrays.copyOf(each.seconds, each.count), amps));
        }
        return waves;
    }
}
