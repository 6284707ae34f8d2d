package evenrise.model.observation;

import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Samples before and after a start, as far as nothing else may come on among them, and straight lines through them. */
final class Stretches {
    private static final int FEWEST = 3;
    private static final int MOST_BEFORE = 12;
    private static final int AT_THE_END = 8;

    private final double[] seconds;
    private final Map<Phase, double[]> amps;
    private final Map<Phase, Double> sigmas;
    private final double interval;
    /** At which something may come on. */
    private final double[] moments;

    /**
     * A line at the last of its samples.
     *
     * @param seconds of that sample
     * @param sigma standard deviation of the amperes
     * @param slope in amperes a second
     * @param slopeSigma standard deviation of the slope
     */
    record Line(double seconds, double amps, double sigma, double slope, double slopeSigma) {}

    Stretches(Said said, double[] seconds, Map<Phase, double[]> amps, Map<Phase, Double> sigmas) {
        this.seconds = seconds;
        this.amps = amps;
        this.sigmas = sigmas;
        this.interval = 2 * said.half;
        List<Double> all = new ArrayList<>();
        said.starts.forEach(each -> all.add(said.due(each)));
        said.starts.stream().filter(each -> each.recorded().isPresent()).forEach(each -> all.add(said.seen(each)));
        said.unknown.forEach(each -> all.add(each.seconds() - said.half));
        this.moments = all.stream().mapToDouble(each -> each).toArray();
    }

    Stream<Phase> phases() {
        return sigmas.keySet().stream();
    }

    /** What flowed at last before; empty where too few samples say so. */
    Optional<Line> before(Phase phase, double due) {
        int[] rows = before(due);
        return line(phase, Arrays.copyOfRange(rows, Math.max(0, rows.length - MOST_BEFORE), rows.length));
    }

    /** What flows at last before something else may come on; empty where too few samples say so. */
    Optional<Line> end(Phase phase, double due) {
        int[] rows = after(due);
        return line(phase, Arrays.copyOfRange(rows, Math.max(0, rows.length - AT_THE_END), rows.length));
    }

    /** The first sample that is wholly after. */
    double firstAmps(Phase phase, double due) {
        return amps.get(phase)[after(due)[0]];
    }

    private int[] before(double due) {
        double earlier = Arrays.stream(moments)
                .filter(each -> each < due - interval)
                .max()
                .orElse(Double.NEGATIVE_INFINITY);
        return rows(Math.max(earlier + 1.5 * interval, due - Hindsight.BEFORE), due - 0.5 * interval);
    }

    private int[] after(double due) {
        double later = Arrays.stream(moments)
                .filter(each -> each > due + interval)
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        return rows(due + 1.5 * interval, Math.min(later - 0.5 * interval, due + Hindsight.AFTER));
    }

    private int[] rows(double from, double to) {
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < seconds.length && seconds[i] <= to; i++) {
            if (seconds[i] >= from) {
                rows.add(i);
            }
        }
        return rows.stream().mapToInt(each -> each).toArray();
    }

    private Optional<Line> line(Phase phase, int[] rows) {
        if (rows.length < FEWEST) {
            return Optional.empty();
        }
        double[] values = amps.get(phase);
        double[][] columns = new double[2][rows.length];
        double[] read = new double[rows.length];
        double last = seconds[rows[rows.length - 1]];
        for (int k = 0; k < rows.length; k++) {
            columns[0][k] = 1;
            columns[1][k] = seconds[rows[k]] - last;
            read[k] = values[rows[k]];
        }
        LeastSquares fit = new LeastSquares(columns, read);
        double scatter = Math.max(sigmas.get(phase), Math.sqrt(fit.squares() / Math.max(1, rows.length - 2)));
        return Optional.of(new Line(
                last,
                fit.part(0),
                scatter * Math.sqrt(fit.variance(0)),
                fit.part(1),
                scatter * Math.sqrt(fit.variance(1))));
    }
}
