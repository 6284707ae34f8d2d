package evenrise.solver.engine.state;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/** Where loads sat and how boards were set in a plan that a new one is not to differ from without need. */
final class EarlierPlan {
    /** A load that the earlier plan does not have: nothing about it counts as moved. */
    private static final int ABSENT = -2;
    /** An earlier place that the project no longer has: every other counts as moved. */
    private static final int GONE = -3;

    /** What a board has whose outputs have times of their own; no other can be set to it. */
    private static final double NO_SETTING = -1;

    private final CompiledProject compiled;
    private final int[] panel;
    private final int[] slot;
    private final int[] output;
    private final double[] delaySeconds;
    private final double[] stepSeconds;
    /** By output with a time of its own, in use then: that time; not a number for others. */
    private final double[] onSeconds;

    EarlierPlan(CompiledProject compiled, Plan earlier) {
        this.compiled = compiled;
        Project project = compiled.project;
        Map<String, Assignment> had = new HashMap<>();
        earlier.assignments().forEach(each -> had.put(each.load(), each));
        Map<String, Integer> panels = new HashMap<>();
        project.panels().forEach(each -> panels.put(each.id(), panels.size()));
        Map<String, Integer> boards = new HashMap<>();
        project.boards().forEach(each -> boards.put(each.id(), boards.size()));
        int count = compiled.loadCount();
        panel = new int[count];
        slot = new int[count];
        output = new int[count];
        onSeconds = new double[compiled.outputs.size()];
        Arrays.fill(onSeconds, Double.NaN);
        for (int load = 0; load < count; load++) {
            Assignment said = had.get(compiled.loads[load].id());
            panel[load] = said == null ? ABSENT : panels.getOrDefault(said.panel(), GONE);
            slot[load] = said == null ? ABSENT : said.slot();
            output[load] = said == null ? ABSENT : output(compiled, boards, said);
        }
        for (Assignment said : had.values()) {
            int at = output(compiled, boards, said);
            if (at >= 0 && compiled.times[compiled.outputs.get(at).board()] != null) {
                onSeconds[at] = said.onSeconds().orElse(0);
            }
        }
        delaySeconds = new double[compiled.boardCount];
        stepSeconds = new double[compiled.boardCount];
        Arrays.fill(delaySeconds, Double.NaN);
        for (BoardSetting said : earlier.boards()) {
            Integer board = boards.get(said.id());
            if (board != null) {
                delaySeconds[board] = said.startDelaySeconds().orElse(NO_SETTING);
                stepSeconds[board] = said.stepSeconds().orElse(NO_SETTING);
            }
        }
    }

    private static int output(CompiledProject compiled, Map<String, Integer> boards, Assignment said) {
        if (said.board().isEmpty() || said.output().isEmpty()) {
            return CompiledProject.NONE;
        }
        Integer board = boards.get(said.board().get());
        int ordinal = said.output().getAsInt() - 1;
        return board == null || ordinal < 0 || ordinal >= compiled.outputCount(board)
                ? GONE
                : compiled.firstOutput[board] + ordinal;
    }

    /** Whether another panel or slot than before. */
    boolean isMoved(int load, Place place) {
        return panel[load] != ABSENT && (panel[load] != place.panel() || slot[load] != place.slot());
    }

    /** Whether another board or output than before; {@code now} is null where it has none. */
    boolean isRewired(int load, Output now) {
        int at = now == null ? CompiledProject.NONE : now.index();
        return output[load] != ABSENT && output[load] != at;
    }

    boolean isSetAnew(int board, Setting delay, Setting step) {
        boolean isEach = compiled.times[board] != null;
        double delaySeconds = isEach ? NO_SETTING : delay.seconds();
        double stepSeconds = isEach ? NO_SETTING : step.seconds();
        return !Double.isNaN(this.delaySeconds[board])
                && (this.delaySeconds[board] != delaySeconds || this.stepSeconds[board] != stepSeconds);
    }

    /** Whether an output with a time of its own, in use then and now, comes on at another time. */
    boolean isRetimed(Output now, long onMicros) {
        double before = onSeconds[now.index()];
        return !Double.isNaN(before) && Math.abs(before * 1e6 - onMicros) > Charges.TIME_TOLERANCE_MICROS;
    }
}
