package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.List;

/** Stages laid out over nights, in their order: as many in each as its window takes. */
public final class Nights {
    private Nights() {}

    /**
     * One night.
     *
     * @param stages their numbers, from 1; none where the next one does not fit in it
     * @param minutes that they take together
     */
    public record Night(int number, double windowMinutes, List<Integer> stages, double minutes) {
        public Night {
            stages = List.copyOf(stages);
        }
    }

    /**
     * What fits in the windows.
     *
     * @param left numbers of the stages for which no window is left, or none is long enough
     */
    public record Layout(List<Night> nights, List<Integer> left) {
        public Layout {
            nights = List.copyOf(nights);
            left = List.copyOf(left);
        }
    }

    public static Layout of(WorkOrder order, List<Double> windowsMinutes) {
        List<Night> nights = new ArrayList<>();
        int next = 0;
        for (double window : windowsMinutes) {
            List<Integer> stages = new ArrayList<>();
            double minutes = 0;
            while (next < order.stages().size()
                    && minutes + order.stages().get(next).minutes() <= window + 1e-9) {
                minutes += order.stages().get(next).minutes();
                stages.add(++next);
            }
            nights.add(new Night(nights.size() + 1, window, stages, minutes));
        }
        List<Integer> left = new ArrayList<>();
        while (next < order.stages().size()) {
            left.add(++next);
        }
        return new Layout(nights, left);
    }
}
