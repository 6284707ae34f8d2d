package evenrise.solver.report;

import evenrise.solver.rework.WorkStage;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A stage as one line of a table.
 *
 * @param system whether it is on, or which systems are off
 * @param besides loads that are off beside those that are locked out
 * @param isolated panels and boards, the first two by name
 * @param out shutdown groups of which a load is off
 * @param outInShort the first two of them
 */
public record StageRow(
        int number,
        String system,
        int lockedOut,
        String besides,
        String isolated,
        int steps,
        long minutes,
        int brokenAfter,
        String out,
        String outInShort) {
    private static final int MOST_BY_NAME = 2;

    static StageRow of(int number, WorkStage stage) {
        return new StageRow(
                number,
                off(stage),
                stage.lockedOut().size(),
                besides(stage),
                isolated(stage),
                stage.steps().size(),
                Math.round(stage.minutes()),
                stage.brokenAfter(),
                out(stage, Integer.MAX_VALUE),
                out(stage, MOST_BY_NAME));
    }

    /** Every stage, in their order. */
    static List<StageRow> of(List<WorkStage> stages) {
        List<StageRow> rows = new ArrayList<>();
        stages.forEach(each -> rows.add(of(rows.size() + 1, each)));
        return rows;
    }

    private static String off(WorkStage stage) {
        return stage.isSystemOff()
                ? "OFF"
                : stage.systemsOff().isEmpty() ? "on" : "OFF: " + String.join(" ", stage.systemsOff());
    }

    private static String out(WorkStage stage, int most) {
        int others = stage.outages().size() - most;
        return stage.outages().isEmpty()
                ? "nothing"
                : stage.outages().stream().limit(most).map(WorkSheets::group).collect(Collectors.joining(", "))
                        + (others > 0 ? " +" + others : "");
    }

    private static String besides(WorkStage stage) {
        int standing = stage.standingBy().size();
        return stage.isSystemOff()
                ? "all"
                : stage.systemsOff().isEmpty() ? Integer.toString(standing) : "systems, " + standing;
    }

    private static String isolated(WorkStage stage) {
        List<String> all = new ArrayList<>(stage.deadPanels());
        all.addAll(stage.deadBoards());
        return all.isEmpty()
                ? "-"
                : all.size() > MOST_BY_NAME
                        ? String.join(" ", all.subList(0, MOST_BY_NAME)) + " +" + (all.size() - MOST_BY_NAME)
                        : String.join(" ", all);
    }
}
