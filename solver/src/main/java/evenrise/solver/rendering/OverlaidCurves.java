package evenrise.solver.rendering;

import evenrise.model.observation.Clock;
import evenrise.model.observation.PlannedCurrent;
import evenrise.model.observation.Recording;
import evenrise.model.project.Phase;
import evenrise.solver.report.Axis;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A recorded start over what a clamp was planned to read, a lane a phase of one scale.
 *
 * @param place what was recorded
 * @param ticks of the axis of time
 */
public record OverlaidCurves(String place, List<Lane> lanes, List<Tick> ticks) {
    static final int WIDTH = 960;
    static final int HEIGHT = 150;

    /** Longer recordings are drawn by the least and the greatest of so many parts. */
    private static final int PARTS = 960;

    private static final double ROOM = 1.5;
    private static final double USUAL = 0.95;

    /**
     * @param planned path of the stair
     * @param recorded path of the recording
     * @param top current at the upper edge
     */
    public record Lane(String phase, String planned, String recorded, String top) {}

    /** @param at its place across the drawing */
    public record Tick(String label, String at) {}

    public int width() {
        return WIDTH;
    }

    public int height() {
        return HEIGHT;
    }

    public static OverlaidCurves of(String place, PlannedCurrent planned, Recording recording, Clock clock) {
        double[] seconds = recording.seconds();
        double from = planned.seconds().get(0);
        double to = clock.plan(seconds[seconds.length - 1]);
        double most = 1;
        for (Map.Entry<Phase, List<Double>> each : planned.amps().entrySet()) {
            for (double amps : each.getValue()) {
                most = Math.max(most, amps);
            }
            double[] read = recording.amps().get(each.getKey());
            if (read != null) {
                // What flows most of the time, and not what surges.
                double[] sorted = read.clone();
                Arrays.sort(sorted);
                most = Math.max(most, sorted[(int) (USUAL * (sorted.length - 1))]);
            }
        }
        Scale scale = new Scale(from, Math.max(to, from + 1), ROOM * most);
        List<Lane> lanes = new ArrayList<>();
        planned.amps().forEach((phase, amps) -> {
            double[] read = recording.amps().get(phase);
            lanes.add(new Lane(
                    phase.name(),
                    stair(planned.seconds(), amps, scale),
                    read == null ? "" : trace(seconds, read, clock, scale),
                    String.format(Locale.ROOT, "%.0f", scale.mostAmps)));
        });
        Axis axis = Axis.fromZero(scale.to);
        List<Tick> ticks = axis.ticks().stream()
                .filter(tick -> tick >= from && tick < scale.to)
                .map(tick -> new Tick(axis.label(tick) + " s", String.format(Locale.ROOT, "%.1f", scale.x(tick))))
                .toList();
        return new OverlaidCurves(place, lanes, ticks);
    }

    private record Scale(double from, double to, double mostAmps) {
        double x(double seconds) {
            return WIDTH * (seconds - from) / (to - from);
        }

        double y(double amps) {
            return HEIGHT * (1 - Math.min(1, amps / mostAmps));
        }
    }

    private static String stair(List<Double> seconds, List<Double> amps, Scale scale) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < seconds.size(); i++) {
            path.append(String.format(
                    Locale.ROOT, i == 0 ? "M%.1f %.1f" : "H%.1fV%.1f", scale.x(seconds.get(i)), scale.y(amps.get(i))));
        }
        return path.append(String.format(Locale.ROOT, "H%d", WIDTH)).toString();
    }

    /** Through the least and the greatest of each part, so that no peak is lost. */
    private static String trace(double[] seconds, double[] amps, Clock clock, Scale scale) {
        double[] least = new double[PARTS];
        double[] most = new double[PARTS];
        boolean[] has = new boolean[PARTS];
        for (int i = 0; i < seconds.length; i++) {
            int part = (int) Math.floor(PARTS * scale.x(clock.plan(seconds[i])) / WIDTH);
            if (part >= 0 && part < PARTS) {
                least[part] = has[part] ? Math.min(least[part], amps[i]) : amps[i];
                most[part] = has[part] ? Math.max(most[part], amps[i]) : amps[i];
                has[part] = true;
            }
        }
        StringBuilder path = new StringBuilder();
        for (int part = 0; part < PARTS; part++) {
            if (has[part]) {
                double x = (part + 0.5) * WIDTH / PARTS;
                path.append(String.format(
                        Locale.ROOT, "%s%.1f %.1f", path.length() == 0 ? "M" : "L", x, scale.y(least[part])));
                if (most[part] > least[part]) {
                    path.append(String.format(Locale.ROOT, "V%.1f", scale.y(most[part])));
                }
            }
        }
        return path.toString();
    }
}
