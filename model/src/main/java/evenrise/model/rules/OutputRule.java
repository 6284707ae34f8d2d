package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A switched load has one output of its own; an unswitched load has none. */
final class OutputRule implements Rule {
    @Override
    public String id() {
        return "output";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            if (!placement.load().switched()) {
                unswitched(placement, broken);
            } else if (placement.isBehindAnother()) {
                behindAnother(placement, broken);
            } else if (!placement.isSequenced()) {
                broken.add(without(placement, layout));
            }
        }
        return broken;
    }

    private static void unswitched(Placement placement, List<String> broken) {
        Assignment said = placement.assignment();
        said.board().ifPresent(board -> broken.add(refused(placement, "board " + Say.quoted(board))));
        said.output().ifPresent(output -> broken.add(refused(placement, "output " + output)));
        said.onSeconds().ifPresent(on -> broken.add(refused(placement, "switch-on time " + Say.seconds(on))));
        said.offSeconds().ifPresent(off -> broken.add(refused(placement, "switch-off time " + Say.seconds(off))));
    }

    private static void behindAnother(Placement placement, List<String> broken) {
        Assignment said = placement.assignment();
        String why = " is behind the contactor of load "
                + Say.quoted(placement.load().comesWith().orElseThrow()) + ", but has ";
        said.board()
                .ifPresent(board -> broken.add("load " + Say.quoted(placement.id()) + why + "board " + Say.quoted(board)
                        + "; none is allowed. Maybe clear it, or let the load come with nothing."));
        said.output()
                .ifPresent(output -> broken.add("load " + Say.quoted(placement.id()) + why + "output " + output
                        + "; none is allowed. Maybe clear it, or let the load come with nothing."));
    }

    private static String refused(Placement placement, String what) {
        return "load " + Say.quoted(placement.id()) + " is not switched, but has " + what
                + "; none is allowed. Maybe clear it, or make the load a switched one.";
    }

    private static String without(Placement placement, Layout layout) {
        Assignment said = placement.assignment();
        Optional<Board> board = layout.places().switchingBoard(said);
        if (board.isPresent()) {
            int output = said.output().orElseThrow();
            Placement holder = layout.outputs(board.get().id()).get(output);
            return "load " + Say.quoted(placement.id()) + " and load " + Say.quoted(holder.id()) + " share output "
                    + output + " of board " + Say.quoted(board.get().id())
                    + "; one load an output is allowed. Maybe move one of them to a free output.";
        }
        return "load " + Say.quoted(placement.id()) + " is switched, but " + missing(said, layout)
                + "; one output of its own is needed. Maybe move it to a free output of a board that reaches panel "
                + Say.panelOf(placement) + ".";
    }

    private static String missing(Assignment said, Layout layout) {
        if (said.board().isEmpty()) {
            return "has no board";
        }
        String name = said.board().get();
        Optional<Board> board = layout.index().board(name);
        if (board.isEmpty()) {
            return "the project has no board " + Say.quoted(name);
        }
        String outputs = "board " + Say.quoted(name) + " has outputs 1 to "
                + layout.index().typeOf(board.get()).outputs();
        return said.output().isPresent()
                ? outputs + ", not " + said.output().getAsInt()
                : "has no output (" + outputs + ")";
    }
}
