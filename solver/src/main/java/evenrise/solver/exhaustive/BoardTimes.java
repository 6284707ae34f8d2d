package evenrise.solver.exhaustive;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.BoardType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Settings of one board that are worth looking at, by when its outputs come on. */
final class BoardTimes {
    /**
     * @param onMicros of outputs from the first on, counted from the board's begin; rising
     */
    record Option(BoardSetting setting, long[] onMicros) {}

    private final SmallProject project;

    BoardTimes(SmallProject project) {
        this.project = project;
    }

    /**
     * Without those whose times another setting has, too: loads could keep their times there, and as many outputs. Where an
     * output is fixed, every setting stays.
     *
     * @param withinMicros of the board's begin; later outputs are left out
     */
    List<Option> of(int board, long withinMicros) {
        BoardType type = project.type(board);
        List<Option> all = new ArrayList<>();
        for (double delay : type.startDelaySeconds()) {
            for (double step : type.stepSeconds()) {
                long from = Micros.exactly(delay).orElseThrow();
                long between = Micros.exactly(step).orElseThrow();
                int outputs = 0;
                while (outputs < type.outputs() && from + outputs * between <= withinMicros) {
                    outputs++;
                }
                if (outputs > 0) {
                    long[] times = new long[outputs];
                    Arrays.setAll(times, number -> from + number * between);
                    all.add(new Option(
                            new BoardSetting(project.boards.get(board).id(), delay, step), times));
                }
            }
        }
        return hasFixedOutput(board) ? all : withoutCovered(all);
    }

    private boolean hasFixedOutput(int board) {
        return project.loads.stream()
                .filter(SmallLoad::switched)
                .filter(load -> load.load().fixed().output().isPresent())
                .anyMatch(load ->
                        project.mayUse(load, board, load.load().fixed().output().getAsInt()));
    }

    private static List<Option> withoutCovered(List<Option> all) {
        List<Option> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            boolean isCovered = false;
            for (int j = 0; j < all.size() && !isCovered; j++) {
                boolean isEarlierTwin =
                        j < i || all.get(j).onMicros().length > all.get(i).onMicros().length;
                isCovered = i != j
                        && isEarlierTwin
                        && covers(all.get(j).onMicros(), all.get(i).onMicros());
            }
            if (!isCovered) {
                kept.add(all.get(i));
            }
        }
        return kept;
    }

    private static boolean covers(long[] more, long[] less) {
        return Arrays.stream(less).allMatch(time -> Arrays.binarySearch(more, time) >= 0);
    }
}
