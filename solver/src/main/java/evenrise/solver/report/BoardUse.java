package evenrise.solver.report;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * How one board is set and used.
 *
 * @param startDelaySeconds empty, as the step, where each output has a time of its own
 * @param firstOnSeconds first switch-on; empty where the board switches nothing
 * @param freeOutputs by their numbers, from 1
 * @param groups shutdown groups it switches, in the order of its outputs
 */
public record BoardUse(
        String board,
        String type,
        String panel,
        Optional<String> after,
        OptionalDouble startDelaySeconds,
        OptionalDouble stepSeconds,
        int outputsUsed,
        int outputs,
        OptionalDouble firstOnSeconds,
        OptionalDouble lastOnSeconds,
        List<String> groups,
        List<Integer> freeOutputs) {
    /** Stands where a board has neither start delay nor step. */
    public static final String EACH_OUTPUT = "each output";

    /** One a board, in the project's order. */
    public static List<BoardUse> of(Layout layout) {
        return layout.project().boards().stream()
                .map(board -> of(layout, board))
                .toList();
    }

    private static BoardUse of(Layout layout, Board board) {
        BoardSetting setting = layout.setting(board);
        Map<Integer, Placement> outputs = layout.outputs(board.id());
        Collection<Placement> switched = outputs.values();
        int all = layout.index().typeOf(board).outputs();
        return new BoardUse(
                board.id(),
                board.type(),
                board.panel(),
                board.after(),
                setting.startDelaySeconds(),
                setting.stepSeconds(),
                switched.size(),
                all,
                switched.stream()
                        .flatMapToDouble(each -> each.onSeconds().stream())
                        .min(),
                switched.stream()
                        .flatMapToDouble(each -> each.onSeconds().stream())
                        .max(),
                switched.stream()
                        .flatMap(each -> each.load().shutdownGroup().stream())
                        .distinct()
                        .toList(),
                IntStream.rangeClosed(1, all)
                        .filter(output -> !outputs.containsKey(output))
                        .boxed()
                        .toList());
    }
}
