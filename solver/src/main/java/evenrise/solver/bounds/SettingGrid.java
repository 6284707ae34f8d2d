package evenrise.solver.bounds;

import evenrise.model.project.BoardType;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import java.util.List;
import java.util.stream.Stream;

/** The interval that all times of boards are multiples of. */
public final class SettingGrid {
    private static final double MICROS = 1e6;

    /** A setting that is further off a whole microsecond is none. */
    private static final double MOST_OFF_MICROS = 1e-3;

    /** No time is a sum of more settings than this, along a chain of boards. */
    private static final double MOST_SETTINGS = 1e5;

    private SettingGrid() {}

    /** Whether two times that differ do so by more than comparisons forgive. */
    public static boolean tellsTimesApart(Project project) {
        long grid = 0;
        double offMicros = 0;
        for (BoardType type : project.boardTypes()) {
            List<Double> times = type.timesSeconds().map(OfferedTimes::all).orElse(List.of());
            for (double seconds : Stream.of(type.startDelaySeconds(), type.stepSeconds(), times)
                    .flatMap(List::stream)
                    .toList()) {
                long micros = Math.round(seconds * MICROS);
                offMicros = Math.max(offMicros, Math.abs(micros - seconds * MICROS));
                grid = greatestCommonDivisor(grid, micros);
            }
        }
        double leastMicros = BoundedProject.FORGIVEN_SECONDS * MICROS + MOST_SETTINGS * offMicros;
        return offMicros <= MOST_OFF_MICROS && (grid == 0 || grid > leastMicros);
    }

    private static long greatestCommonDivisor(long a, long b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }
}
