package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Board;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** On a board, in output order, nothing interrupts a group's loads. */
final class GroupRunRule implements Rule {
    @Override
    public String id() {
        return "group-run";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            if (!layout.index().seatsGroupsWhole(board)) {
                continue;
            }
            Map<String, List<Integer>> runs = runs(layout.outputs(board.id()));
            runs.forEach((group, starts) -> {
                if (starts.size() > 1) {
                    broken.add(Broken.by(BrokenKind.INTERRUPTED_GROUP)
                            .group(group)
                            .board(board.id())
                            .word("outputs", RuleWords.listed(starts))
                            .at("board " + board.id())
                            .figure(starts.size(), 1, "")
                            .build());
                }
            });
        }
        return broken;
    }

    /** First output of every run of each group on a board; an unused output interrupts nothing. */
    private static Map<String, List<Integer>> runs(Map<Integer, Placement> outputs) {
        Map<String, List<Integer>> runs = new LinkedHashMap<>();
        Optional<String> before = Optional.empty();
        for (Map.Entry<Integer, Placement> each : outputs.entrySet()) {
            Optional<String> group = each.getValue().load().shutdownGroup();
            if (group.isPresent() && !group.equals(before)) {
                runs.computeIfAbsent(group.get(), any -> new ArrayList<>()).add(each.getKey());
            }
            before = group;
        }
        return runs;
    }
}
