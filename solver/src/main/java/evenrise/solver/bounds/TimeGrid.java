package evenrise.solver.bounds;

import evenrise.model.project.BoardType;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import java.util.List;

/**
 * Instants that stand for all times at which a load can come on. Exact: sums of start delays, steps and offered times are multiples of
 * their greatest common divisor, so number i stands for the one time i·step. Coarse, where that divisor is too fine or
 * there is none: number i stands for all times above (i − 1)·step up to i·step.
 *
 * @param stepSeconds from one instant to the next; more than 0
 * @param count instants; at least 1
 * @param exact whether each stands for one time alone
 */
record TimeGrid(double stepSeconds, int count, boolean exact) {
    private static final int MOST_EXACT = 600;
    private static final int COARSE = 256;
    private static final double MICROS = 1e6;

    /** Far above what sums of doubles lose, far below any step that matters. */
    private static final double ROUNDING = 1e-6;

    /** The instants from 0 to {@code horizonSeconds}. */
    static TimeGrid upTo(double horizonSeconds, Project project) {
        return upTo(horizonSeconds, project, MOST_EXACT);
    }

    /** @param most of exact instants, else {@link #COARSE} coarse ones */
    static TimeGrid upTo(double horizonSeconds, Project project, int most) {
        long micros = commonMicros(project);
        if (micros == 0 || horizonSeconds <= 0) {
            return new TimeGrid(1, 1, true);
        }
        double fine = Math.floor(horizonSeconds * MICROS / micros + ROUNDING) + 1;
        return micros > 0 && fine <= most
                ? new TimeGrid(micros / MICROS, (int) fine, true)
                : new TimeGrid(horizonSeconds / COARSE, COARSE + 1, false);
    }

    /** Earliest time that the instant stands for (not itself among them where coarse). */
    double earliestSeconds(int instant) {
        return Math.max(0, (exact ? instant : instant - 1) * stepSeconds);
    }

    /** Latest time that the instant stands for. */
    double latestSeconds(int instant) {
        return instant * stepSeconds;
    }

    /** First instant for times from {@code seconds} on. */
    int first(double seconds) {
        return (int) Math.ceil(seconds / stepSeconds - ROUNDING);
    }

    /** Last instant for times up to {@code seconds}. */
    int last(double seconds) {
        double instants = seconds / stepSeconds;
        return (int) (exact ? Math.floor(instants + ROUNDING) : Math.ceil(instants - ROUNDING));
    }

    /** Greatest common divisor of all delays, steps and offered times, in microseconds; 0 where all are 0, −1 where there is none. */
    private static long commonMicros(Project project) {
        long common = 0;
        for (BoardType type : project.boardTypes()) {
            for (Iterable<Double> offered : List.of(type.startDelaySeconds(), type.stepSeconds(), offered(type))) {
                for (double seconds : offered) {
                    long micros = Math.round(seconds * MICROS);
                    if (Math.abs(seconds * MICROS - micros) > ROUNDING) {
                        return -1;
                    }
                    common = gcd(common, micros);
                }
            }
        }
        return common;
    }

    private static List<Double> offered(BoardType type) {
        return type.timesSeconds().map(OfferedTimes::all).orElse(List.of());
    }

    private static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
