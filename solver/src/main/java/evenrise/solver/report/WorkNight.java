package evenrise.solver.report;

import java.util.List;

/**
 * A night of the work.
 *
 * @param stages their numbers, from 1; none where the next one does not fit in it
 * @param minutes that they take together
 * @param morning how the plant stands after it
 */
public record WorkNight(int number, double windowMinutes, List<Integer> stages, double minutes, String morning) {
    public WorkNight {
        stages = List.copyOf(stages);
    }

    public long window() {
        return Math.round(windowMinutes);
    }

    public long rounded() {
        return Math.round(minutes);
    }
}
