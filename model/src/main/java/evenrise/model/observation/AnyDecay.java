package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is said of a current is held against several forms that a surge may decay by: exponentials, shoulders, tails as the
 * square of time, and two parts. Where what flows in the end may be as planned by one of these, nothing else can be told.
 * Stretched exponentials with longer tails than these are not covered.
 */
final class AnyDecay {
    /** Standard deviations that are allowed for. */
    private static final double SURE = 3;

    /** Half-lives may be so much longer than stated (common practice, no source). */
    private static final double LONGER = 1.3;

    /** A tail that has halved after a half-life goes on as the square of 1 + so much of the half-lives. */
    private static final double TAIL = Math.sqrt(2) - 1;

    /** The slower of two parts, and how much slower it is (both common practice, no source). */
    private static final double SECOND = 0.3;

    private static final double SLOWER = 0.35;

    /** Slopes tell no more than so much of what is left, since no form is known. */
    private static final double SLOPES = 1.5;

    /** Squared deviation of a sample, in variances: of some 65 samples it is above that by chance in one of twenty. */
    private static final double CLEAR = 1.3;

    private static final int FEWEST = 3;
    private static final int MOST = 12;
    private static final int AT_THE_END = 8;

    private final Said said;
    private final double[] seconds;
    private final Map<Phase, double[]> amps;
    private final Map<Phase, Double> sigmas;
    private final double[] moments;

    /** Mean and slope at the end of some samples, and the standard deviations of both. */
    private record Line(double amps, double sigma, double slope, double slopeSigma) {}

    AnyDecay(Said said, double[] seconds, Map<Phase, double[]> amps, Map<Phase, Double> sigmas) {
        this.said = said;
        this.seconds = seconds;
        this.amps = amps;
        this.sigmas = sigmas;
        List<Double> all = new ArrayList<>();
        said.starts.forEach(each -> all.add(said.due(each)));
        said.starts.stream().filter(each -> each.recorded().isPresent()).forEach(each -> all.add(said.seen(each)));
        said.unknown.forEach(each -> all.add(each.seconds() - said.half));
        this.moments = all.stream().mapToDouble(each -> each).sorted().toArray();
    }

    /** The most that may be left of a surge after so many half-lives. */
    static double left(double halves) {
        return halves <= 1 ? 1 : Math.max(Math.pow(1 + TAIL * halves, -2), SECOND * Math.pow(2, -SLOWER * halves));
    }

    /** Takes back what a surge of another form may look like. */
    void doubt() {
        for (int i = 0; i < said.starts.size(); i++) {
            ObservedStart start = said.starts.get(i);
            Finding finding = start.finding();
            int other = said.partner(i).orElse(-1);
            if ((finding == Finding.OTHER_SIZE || finding == Finding.MISSING) && mayBeAsPlanned(start)
                    || finding == Finding.SWAPPED
                            && other >= 0
                            && mayBeAsPlanned(start)
                            && mayBeAsPlanned(said.starts.get(other))) {
                open(i);
                if (other >= 0) {
                    open(other);
                }
            }
        }
        said.unknown.removeIf(this::isToldAlready);
    }

    private void open(int i) {
        ObservedStart start = said.starts.get(i);
        if (start.recorded().isPresent() && isKnown(start)) {
            said.dropStart(i);
            return;
        }
        said.starts.set(
                i,
                new ObservedStart(
                        start.expected(),
                        Finding.CANNOT_TELL,
                        Finding.AS_PLANNED,
                        start.recorded(),
                        start.planSeconds(),
                        0.5,
                        Optional.empty()));
    }

    /** Whether what may be left of its surge hides nothing: then it is as planned. */
    private boolean isKnown(ObservedStart start) {
        return sigmas.keySet().stream()
                .filter(phase -> start.expected().amps(phase) > 0)
                .allMatch(phase -> {
                    int[] after = rows(said.due(start), 1);
                    int[] end = Arrays.copyOfRange(after, Math.max(0, after.length - AT_THE_END), after.length);
                    return end.length >= FEWEST
                            && own(
                                            start.expected(),
                                            phase,
                                            0,
                                            line(phase, end),
                                            seconds[end[end.length - 1]] - said.due(start))
                                    <= SURE * Likeness.SPREAD * start.expected().amps(phase);
                });
    }

    /** Whether on each phase no more and no less flows in the end than a surge of some form may leave. */
    private boolean mayBeAsPlanned(ObservedStart start) {
        boolean isClear = isClear(start);
        return sigmas.keySet().stream()
                .filter(phase -> start.expected().amps(phase) > 0)
                .allMatch(phase -> mayBeAsPlanned(start.expected(), phase, said.due(start), isClear));
    }

    /** Whether samples fit what is said so well that what came on before must have decayed as it is modelled. */
    private boolean isClear(ObservedStart start) {
        List<Claim> claims = said.claims();
        return claims.stream()
                .filter(each -> each.start() >= 0 && said.starts.get(each.start()) == start)
                .anyMatch(each -> said.hindsight
                                .gain(each.moments(), Claim.all(claims, each), each.what())
                                .perSample()
                        <= CLEAR);
    }

    private boolean mayBeAsPlanned(ExpectedStart expected, Phase phase, double due, boolean isClear) {
        int[] before = rows(due, -1);
        int[] after = rows(due, 1);
        if (before.length < FEWEST || after.length < FEWEST) {
            return false;
        }
        Line was = line(phase, before);
        int[] end = Arrays.copyOfRange(after, Math.max(0, after.length - AT_THE_END), after.length);
        Line is = line(phase, end);
        double since = seconds[end[end.length - 1]] - due;
        double rise = is.amps() - was.amps();
        double noise = SURE * Math.hypot(is.sigma(), was.sigma());
        double read = Math.min(expected.readAmps(phase), expected.amps(phase));
        double spread = SURE * Likeness.SPREAD;
        double falls = Math.max(0, -was.slope()) + SURE * was.slopeSigma();
        double earlier = isClear
                ? 0
                : Math.min(falls * since, earlier(expected, phase, seconds[before[before.length - 1]], due + since));
        double most = (1 + spread) * expected.amps(phase)
                + own(expected, phase, amps.get(phase)[after[0]] - was.amps(), is, since);
        return rise <= most + noise && rise >= (1 - spread) * read - earlier - noise;
    }

    /** What may be left of its own surge. */
    private double own(ExpectedStart expected, Phase phase, double jump, Line end, double since) {
        double half = LONGER * expected.longestHalfSeconds();
        double surge = Math.max(expected.surgeAmps().getOrDefault(phase, 0.0), jump);
        if (half == 0) {
            return 0;
        }
        double stated = surge * left(since / half);
        double falls = Math.max(0, -end.slope()) + SURE * end.slopeSigma();
        double seen = SLOPES * falls * Math.max((since + half / TAIL) / 2, half / SLOWER / Math.log(2));
        return Math.min(stated, seen);
    }

    /** By how much surges of earlier starts may fall meanwhile. */
    private double earlier(ExpectedStart but, Phase phase, double from, double to) {
        double sum = 0;
        for (ObservedStart each : said.starts) {
            double half = LONGER * each.expected().longestHalfSeconds();
            double on = said.due(each);
            if (each.expected() != but && half > 0 && on < from) {
                double surge = each.expected().surgeAmps().getOrDefault(phase, 0.0);
                sum += surge * (left((from - on) / half) - left((to - on) / half));
            }
        }
        return sum;
    }

    /** Samples on one side up to the next moment at which something may come on; the last ones of them. */
    private int[] rows(double due, int side) {
        double interval = 2 * said.half;
        double bound = side * Double.POSITIVE_INFINITY;
        for (double each : moments) {
            if (side * (each - due) > interval) {
                bound = side * Math.min(side * bound, side * each);
            }
        }
        double from = side < 0 ? Math.max(bound + 1.5 * interval, due - Hindsight.BEFORE) : due + 1.5 * interval;
        double to = side < 0 ? due - 0.5 * interval : Math.min(bound - 0.5 * interval, due + Hindsight.AFTER);
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < seconds.length && seconds[i] <= to; i++) {
            if (seconds[i] >= from) {
                rows.add(i);
            }
        }
        return rows.stream()
                .skip(side < 0 ? Math.max(0, rows.size() - MOST) : 0)
                .mapToInt(each -> each)
                .toArray();
    }

    /** Through samples, as it is at the last of them. */
    private Line line(Phase phase, int[] rows) {
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
        return new Line(
                fit.part(0), scatter * Math.sqrt(fit.variance(0)), fit.part(1), scatter * Math.sqrt(fit.variance(1)));
    }

    /** Whether on each of its phases it is the step of a planned start, which stands for that one already. */
    private boolean isToldAlready(RecordedStart unknown) {
        return unknown.steps().entrySet().stream()
                .allMatch(step -> said.starts.stream()
                        .flatMap(each -> each.recorded().stream())
                        .anyMatch(start -> step.getValue().equals(start.steps().get(step.getKey()))));
    }
}
