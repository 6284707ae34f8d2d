package evenrise.model.rules;

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
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        if (layout.project().systems().isEmpty()) {
            return broken;
        }
        for (Board board : layout.project().boards()) {
            Set<String> served = served(layout, board);
            if (served.isEmpty()) {
                continue;
            }
            if (served.size() > 1) {
                broken.add("board " + Say.quoted(board.id()) + " switches loads of systems " + Say.quoted(served)
                        + "; one is allowed. Maybe move the fewer to another board.");
            } else if (board.system().filter(own -> !served.contains(own)).isPresent()) {
                broken.add("board " + Say.quoted(board.id()) + " is of system "
                        + Say.quoted(board.system().get()) + ", but switches loads of " + Say.quoted(served)
                        + ". Maybe move them to a board of theirs.");
            }
            usedBefore(layout, board)
                    .filter(before -> !served(layout, before).equals(served))
                    .ifPresent(
                            before -> broken.add(
                                    "board " + Say.quoted(board.id()) + " switches loads of "
                                            + Say.quoted(served) + ", but follows board " + Say.quoted(before.id())
                                            + ", which switches loads of "
                                            + Say.quoted(served(layout, before))
                                            + "; both must serve one system. Maybe let it follow another board, or start with the command."));
        }
        return broken;
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
