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

/** A board, and the used board that it follows, serve one system. */
final class SystemRule implements Rule {
    @Override
    public String id() {
        return "system";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        if (layout.project().systems().isEmpty()) {
            return broken;
        }
        for (Board board : layout.project().boards()) {
            Set<String> served = served(layout, board);
            if (served.isEmpty()) {
                continue;
            }
            if (served.size() > 1) {
                broken.add(about(BrokenKind.MIXED_SYSTEMS, board)
                        .all("systems", SubjectKind.SYSTEM, served)
                        .figure(served.size(), 1, "")
                        .build());
            } else if (board.system().filter(own -> !served.contains(own)).isPresent()) {
                broken.add(about(BrokenKind.OTHER_SYSTEM, board)
                        .one("own", SubjectKind.SYSTEM, board.system().get())
                        .all("systems", SubjectKind.SYSTEM, served)
                        .build());
            }
            usedBefore(layout, board)
                    .filter(before -> !served(layout, before).equals(served))
                    .ifPresent(before -> broken.add(about(BrokenKind.FOLLOWS_OTHER_SYSTEM, board)
                            .one("before", SubjectKind.BOARD, before.id())
                            .all("systems", SubjectKind.SYSTEM, served)
                            .all("others", SubjectKind.SYSTEM, served(layout, before))
                            .build()));
        }
        return broken;
    }

    private static Broken about(BrokenKind kind, Board board) {
        return Broken.by(kind).board(board.id()).at("board " + board.id());
    }

    private static Set<String> served(Layout layout, Board board) {
        return layout.outputs(board.id()).values().stream()
                .flatMap(each -> each.load().system().stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The board with an output in use that this one follows, directly or by others without. */
    private static Optional<Board> usedBefore(Layout layout, Board board) {
        Optional<Board> before = board.after().flatMap(layout.index()::board);
        while (before.isPresent() && layout.outputs(before.get().id()).isEmpty()) {
            before = before.get().after().flatMap(layout.index()::board);
        }
        return before;
    }
}
