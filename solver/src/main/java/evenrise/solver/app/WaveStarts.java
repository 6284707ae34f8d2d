package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.intake.RecorderColumns;
import evenrise.model.observation.InrushFit;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.solver.recording.RecordedWave;
import evenrise.solver.recording.RecordingFile;
import evenrise.solver.report.WaveStart;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/** Peaks and half-lives out of a recorded wave, of loads that come on alone: a second pass through the file. */
final class WaveStarts {
    private static final double PERIODS_BEFORE = 10;
    private static final double LONGEST_SECONDS = 1.5;

    private WaveStarts() {}

    static List<WaveStart> of(Layout layout, Observation seen, Path file, List<RecorderColumns> said) {
        double period = 1 / layout.project().supply().frequencyHertz();
        List<ObservedStart> all = seen.starts().stream()
                .filter(each -> each.recorded().isPresent())
                .sorted(Comparator.comparingDouble(
                        each -> each.recorded().orElseThrow().seconds()))
                .toList();
        List<ObservedStart> alone = new ArrayList<>();
        List<double[]> spans = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            double at = all.get(i).recorded().orElseThrow().seconds();
            double until = i + 1 < all.size()
                    ? all.get(i + 1).recorded().orElseThrow().seconds() - 2 * period
                    : Double.POSITIVE_INFINITY;
            double before = i > 0 ? all.get(i - 1).recorded().orElseThrow().seconds() : Double.NEGATIVE_INFINITY;
            boolean isAlone = all.get(i).expected().loads().size() == 1 && at - before > PERIODS_BEFORE * period;
            if (isAlone) {
                alone.add(all.get(i));
                spans.add(new double[] {at - PERIODS_BEFORE * period, Math.min(until, at + LONGEST_SECONDS)});
            }
        }
        List<WaveStart> found = new ArrayList<>();
        List<RecordedWave> waves = waves(file, said, spans);
        for (int i = 0; i < waves.size(); i++) {
            ObservedStart start = alone.get(i);
            Load load = layout.placement(start.expected().loads().get(0))
                    .orElseThrow()
                    .load();
            double at = start.recorded().orElseThrow().seconds() - period / 2;
            for (Map.Entry<Phase, double[]> each : waves.get(i).amps().entrySet()) {
                boolean isOn = start.recorded().orElseThrow().steps().containsKey(each.getKey());
                if (isOn) {
                    InrushFit.of(waves.get(i).seconds(), each.getValue(), at, period)
                            .ifPresent(fit -> found.add(new WaveStart(
                                    load.id(),
                                    each.getKey(),
                                    seen.clock().plan(fit.seconds()),
                                    fit,
                                    load.inrushPeakAmps(),
                                    load.inrushHalfMillis())));
                }
            }
        }
        return found;
    }

    private static List<RecordedWave> waves(Path file, List<RecorderColumns> said, List<double[]> spans) {
        try {
            return RecordingFile.waves(file, said, spans);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    "'" + Harmless.shown(file.toString()) + "' cannot be read: "
                            + Harmless.shown(String.valueOf(e.getMessage())) + ".");
        }
    }
}
