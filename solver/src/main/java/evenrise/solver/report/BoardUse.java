package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * How one board is set and used.
 *
 * @param outputsUsed assignments to it, as the plan states them
 * @param firstOnSeconds first switch-on; empty where the board switches nothing
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
        List<String> groups) {

    /** One sheet a board, in the project's order. */
    static List<BoardUse> of(Project project, Plan plan) {
        Map<String, Integer> outputs =
                project.boardTypes().stream().collect(Collectors.toMap(BoardType::id, BoardType::outputs, (a, b) -> a));
        Map<String, BoardSetting> settings =
                plan.boards().stream().collect(Collectors.toMap(BoardSetting::id, Function.identity(), (a, b) -> a));
        Map<String, List<Assignment>> switched = plan.assignments().stream()
                .filter(assignment -> assignment.board().isPresent())
                .collect(Collectors.groupingBy(assignment -> assignment.board().orElseThrow()));
        Map<String, String> groups = project.loads().stream()
                .filter(load -> load.shutdownGroup().isPresent())
                .collect(Collectors.toMap(
                        load -> load.id(), load -> load.shutdownGroup().orElseThrow(), (a, b) -> a));
        List<BoardUse> uses = new ArrayList<>();
        for (Board board : project.boards()) {
            List<Assignment> own = new ArrayList<>(switched.getOrDefault(board.id(), List.of()));
            own.sort(java.util.Comparator.comparingInt(each -> each.output().orElse(0)));
            Optional<BoardSetting> setting = Optional.ofNullable(settings.get(board.id()));
            uses.add(new BoardUse(
                    board.id(),
                    board.type(),
                    board.panel(),
                    board.after(),
                    number(setting.map(BoardSetting::startDelaySeconds)),
                    number(setting.map(BoardSetting::stepSeconds)),
                    own.size(),
                    outputs.getOrDefault(board.type(), 0),
                    own.stream()
                            .flatMapToDouble(each -> each.onSeconds().stream())
                            .min(),
                    own.stream()
                            .flatMapToDouble(each -> each.onSeconds().stream())
                            .max(),
                    own.stream()
                            .flatMap(each -> Optional.ofNullable(groups.get(each.load())).stream())
                            .distinct()
                            .toList()));
        }
        return uses;
    }

    private static OptionalDouble number(Optional<Double> number) {
        return number.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
