package evenrise.solver.bounds;

import evenrise.model.project.BoardType;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import java.util.List;
import java.util.stream.Stream;

/** The interval that all times of boards are multiples of. */
public final class SettingGrid {
    private static final double MICROS = 1e6;
    /** Comparisons of times forgive half of this. */
    private static final long LEAST_MICROS = 1000;

    private SettingGrid() {}

    /** Whether two times that differ do so by more than comparisons forgive. */
    public static boolean tellsTimesApart(Project project) {
        long grid = 0;
        for (BoardType type : project.boardTypes()) {
            List<Double> times = type.timesSeconds().map(OfferedTimes::all).orElse(List.of());
            for (double seconds : Stream.of(type.startDelaySeconds(), type.stepSeconds(), times)
                    .flatMap(List::stream)
                    .toList()) {
                long micros = Math.round(seconds * MICROS);
                if (Math.abs(micros - seconds * MICROS) > 1e-3) {
                    return false;
                }
                grid = greatestCommonDivisor(grid, micros);
            }
        }
        return grid == 0 || grid >= LEAST_MICROS;
    }

    private static long greatestCommonDivisor(long a, long b) {
        return b == 0 ? a : greatestCommonDivisor(b, a % b);
    }
}
