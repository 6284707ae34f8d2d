package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.observation.Stretches.Line;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What is said of a current is held against several forms that a surge may decay by: exponentials, shoulders, tails as the
 * square of time, and two parts. Where what flows in the end may be as planned by one of these, nothing else can be told.
 * Stretched exponentials with longer tails than these are not covered.
 */
final class AnyDecay {
    /** Standard deviations that are allowed for. */
    private static final double SURE = 3;

    /** Half-lives may be so much longer than stated (chosen, no source). */
    private static final double LONGER = 1.3;

    /** A tail that has halved after a half-life goes on as the square of 1 + so much of the half-lives. */
    private static final double TAIL = Math.sqrt(2) - 1;

    /** The slower of two parts, and how much slower it is (both chosen, no source). */
    private static final double SECOND = 0.3;

    private static final double SLOWER = 0.35;

    /** Slopes tell no more than so much of what is left, since no form is known (chosen, no source). */
    private static final double SLOPES = 1.5;

    /** Squared deviation of a sample, in variances: the mean of some 65 is above that by chance in one of twenty. */
    private static final double CLEAR = 1.3;

    private final Said said;
    private final Stretches stretches;

    AnyDecay(Said said, Stretches stretches) {
        this.said = said;
        this.stretches = stretches;
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
        double due = said.due(start);
        return phases(start).allMatch(phase -> {
            Optional<Line> end = stretches.end(phase, due);
            return end.isPresent()
                    && own(start.expected(), phase, 0, end.get(), due)
                            <= SURE * Likeness.SPREAD * start.expected().amps(phase);
        });
    }

    private Stream<Phase> phases(ObservedStart start) {
        return stretches.phases().filter(phase -> start.expected().amps(phase) > 0);
    }

    /** Whether on each phase no more and no less flows in the end than a surge of some form may leave. */
    private boolean mayBeAsPlanned(ObservedStart start) {
        boolean isClear = isClear(start);
        return phases(start).allMatch(phase -> mayBeAsPlanned(start.expected(), phase, said.due(start), isClear));
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
        Optional<Line> before = stretches.before(phase, due);
        Optional<Line> end = stretches.end(phase, due);
        if (before.isEmpty() || end.isEmpty()) {
            return false;
        }
        Line was = before.get();
        Line is = end.get();
        double rise = is.amps() - was.amps();
        double noise = SURE * Math.hypot(is.sigma(), was.sigma());
        double read = Math.min(expected.readAmps(phase), expected.amps(phase));
        double spread = SURE * Likeness.SPREAD;
        double earlier = isClear
                ? 0
                : Math.min(falls(was) * (is.seconds() - due), earlier(expected, phase, was.seconds(), is.seconds()));
        double jump = stretches.firstAmps(phase, due) - was.amps();
        double most = (1 + spread) * expected.amps(phase) + own(expected, phase, jump, is, due);
        return rise <= most + noise && rise >= (1 - spread) * read - earlier - noise;
    }

    /** How fast a current falls at most, in amperes a second. */
    private static double falls(Line line) {
        return Math.max(0, -line.slope()) + SURE * line.slopeSigma();
    }

    /** What may be left of its own surge. */
    private double own(ExpectedStart expected, Phase phase, double jump, Line end, double due) {
        double half = LONGER * expected.longestHalfSeconds();
        double since = end.seconds() - due;
        double surge = Math.max(expected.surgeAmps().getOrDefault(phase, 0.0), jump);
        if (half == 0) {
            return 0;
        }
        double stated = surge * left(since / half);
        double seen = SLOPES * falls(end) * Math.max((since + half / TAIL) / 2, half / SLOWER / Math.log(2));
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

    /** Whether on each of its phases it is the step of a planned start, which stands for that one already. */
    private boolean isToldAlready(RecordedStart unknown) {
        return unknown.steps().entrySet().stream()
                .allMatch(step -> said.starts.stream()
                        .flatMap(each -> each.recorded().stream())
                        .anyMatch(start -> step.getValue().equals(start.steps().get(step.getKey()))));
    }
}
