package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.SubjectKind;
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

    /** A group that is larger than any board counts as that, however many of it are off. */
    @Override
    public boolean countsWhilePartsAreOff(BrokenRule found, ProjectIndex index) {
        return !BrokenKind.SPLIT_GROUP.is(found)
                || found.subjects(SubjectKind.GROUP)
                        .noneMatch(group -> sequenced(group, index) > index.largestBoardOutputs());
    }

    private static long sequenced(String group, ProjectIndex index) {
        return index.project().loads().stream()
                .filter(load -> load.switched() && load.comesWith().isEmpty())
                .filter(load -> load.shutdownGroup().equals(Optional.of(group)))
                .count();
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        int largest = layout.index().largestBoardOutputs();
        Set<String> whole = layout.project().boards().stream()
                .filter(layout.index()::seatsGroupsWhole)
                .map(Board::id)
                .collect(Collectors.toSet());
        layout.groups().forEach((group, all) -> {
            List<Placement> members =
                    all.stream().filter(each -> !each.isBehindAnother()).toList();
            Set<String> boards =
                    members.stream().map(RuleWords::boardOf).collect(Collectors.toCollection(TreeSet::new));
            if (boards.stream().noneMatch(whole::contains)) {
                return;
            }
            if (members.size() > largest) {
                boards.stream().filter(whole::contains).forEach(board -> shared(group, board, layout, broken));
            } else if (boards.size() > 1) {
                broken.add(Broken.by(BrokenKind.SPLIT_GROUP)
                        .group(group)
                        .all("boards", SubjectKind.BOARD, boards)
                        .at("boards " + String.join(", ", boards))
                        .figure(members.size(), largest, "")
                        .build());
            }
        });
        return broken;
    }

    private static void shared(String group, String board, Layout layout, List<BrokenRule> broken) {
        List<String> others = layout.outputs(board).values().stream()
                .filter(each -> !each.load().shutdownGroup().equals(Optional.of(group)))
                .map(Placement::id)
                .toList();
        if (!others.isEmpty()) {
            broken.add(Broken.by(BrokenKind.SHARED_BOARD)
                    .group(group)
                    .board(board)
                    .all("strangers", SubjectKind.LOAD, others)
                    .at("board " + board)
                    .build());
        }
    }
}
