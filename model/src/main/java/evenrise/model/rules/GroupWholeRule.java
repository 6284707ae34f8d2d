package evenrise.model.rules;

import evenrise.model.project.Board;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * A shutdown group that fits the largest board sits on one board; a larger one shares none of its boards. Only boards that
 * seat groups whole ask for it; loads behind the contactor of another need no output and do not count.
 */
final class GroupWholeRule implements Rule {
    @Override
    public String id() {
        return "group-whole";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        int largest = layout.index().largestBoardOutputs();
        Set<String> whole = layout.project().boards().stream()
                .filter(layout.index()::seatsGroupsWhole)
                .map(Board::id)
                .collect(Collectors.toSet());
        layout.groups().forEach((group, all) -> {
            List<Placement> members =
                    all.stream().filter(each -> !each.isBehindAnother()).toList();
            Set<String> boards = members.stream().map(Say::boardOf).collect(Collectors.toCollection(TreeSet::new));
            if (boards.stream().noneMatch(whole::contains)) {
                return;
            }
            if (members.size() > largest) {
                boards.stream().filter(whole::contains).forEach(board -> shared(group, board, layout, broken));
            } else if (boards.size() > 1) {
                broken.add("shutdown group " + Say.quoted(group) + " (" + members.size()
                        + " loads) is split over boards " + Say.quoted(boards) + "; a group of up to " + largest
                        + " loads, the outputs of the largest board, must sit on one."
                        + " Maybe move all of it to a board with enough outputs.");
            }
        });
        return broken;
    }

    private static void shared(String group, String board, Layout layout, List<String> broken) {
        List<String> others = layout.outputs(board).values().stream()
                .filter(each -> !each.load().shutdownGroup().equals(Optional.of(group)))
                .map(Placement::id)
                .toList();
        if (!others.isEmpty()) {
            broken.add("shutdown group " + Say.quoted(group) + " is larger than any board, but shares board "
                    + Say.quoted(board) + " with " + Say.quoted(others)
                    + "; its boards may hold nothing else. Maybe move those to another board.");
        }
    }
}
