package evenrise.model.rules;

import evenrise.model.project.Board;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;

/** On a board, in output order, nothing interrupts a group's loads. */
final class GroupRunRule implements Rule {
    @Override
    public String id() {
        return "group-run";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            if (!layout.index().seatsGroupsWhole(board)) {
                continue;
            }
            Map<String, List<Integer>> runs = runs(layout.outputs(board.id()));
            runs.forEach((group, starts) -> {
                if (starts.size() > 1) {
                    broken.add("shutdown group " + Say.quoted(group) + " is interrupted on board "
                            + Say.quoted(board.id()) + ": it has runs from outputs " + Say.listed(starts)
                            + ", one run is allowed. Maybe exchange outputs so that its loads follow each other.");
                }
            });
        }
        return broken;
    }

    /** First output of every run of each group on a board; an unused output interrupts nothing. */
    private static Map<String, List<Integer>> runs(NavigableMap<Integer, Placement> outputs) {
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
