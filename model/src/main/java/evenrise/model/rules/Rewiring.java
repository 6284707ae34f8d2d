package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How much of a plan differs from an earlier one, over the loads and boards that both have.
 *
 * @param breakers loads in another panel or slot
 * @param leads loads on another board or output
 * @param settings boards with another start delay or step, and outputs with a time of their own, in use in both, whose time
 *     differs by more than half a millisecond
 */
public record Rewiring(int breakers, int leads, int settings) {
    private record Output(String board, int output) {}

    public static Rewiring of(Layout layout, Plan earlier) {
        Map<String, Assignment> old = new LinkedHashMap<>();
        earlier.assignments().forEach(each -> old.put(each.load(), each));
        Map<String, BoardSetting> held = new HashMap<>();
        earlier.boards().forEach(each -> held.put(each.id(), each));
        Map<Output, Double> had = new HashMap<>();
        old.values().forEach(each -> onTime(layout, each, had));
        int breakers = 0;
        int leads = 0;
        Map<Output, Double> has = new HashMap<>();
        for (Placement placement : layout.placements()) {
            Assignment now = placement.assignment();
            onTime(layout, now, has);
            Assignment before = old.get(now.load());
            if (before != null) {
                breakers += before.panel().equals(now.panel()) && before.slot() == now.slot() ? 0 : 1;
                leads += before.board().equals(now.board()) && before.output().equals(now.output()) ? 0 : 1;
            }
        }
        int settings = (int) has.entrySet().stream()
                .filter(each -> had.containsKey(each.getKey()))
                .filter(each -> Math.abs(each.getValue() - had.get(each.getKey())) > Tolerances.SECONDS)
                .count();
        for (Board board : layout.project().boards()) {
            boolean differs = Optional.ofNullable(held.get(board.id()))
                    .filter(before -> !before.equals(layout.setting(board)))
                    .isPresent();
            settings += differs ? 1 : 0;
        }
        return new Rewiring(breakers, leads, settings);
    }

    /** What the plan says of an output that has a time of its own. */
    private static void onTime(Layout layout, Assignment said, Map<Output, Double> times) {
        said.board()
                .flatMap(layout.index()::board)
                .filter(board -> layout.index().typeOf(board).isTimedByOutput()
                        && said.output().isPresent())
                .ifPresent(board -> times.put(
                        new Output(board.id(), said.output().getAsInt()),
                        said.onSeconds().orElse(0)));
    }
}
