package evenrise.model.rules;

import static evenrise.model.contract.Figures.THOUSANDTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
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
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
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

    private static void unswitched(Placement placement, List<BrokenRule> broken) {
        Assignment said = placement.assignment();
        said.board().ifPresent(board -> broken.add(refused(placement, "board " + Phrase.quoted(board))));
        said.output().ifPresent(output -> broken.add(refused(placement, "output " + output)));
        said.onSeconds().ifPresent(on -> broken.add(refused(placement, "switch-on time " + THOUSANDTHS.seconds(on))));
        said.offSeconds()
                .ifPresent(off -> broken.add(refused(placement, "switch-off time " + THOUSANDTHS.seconds(off))));
    }

    private static void behindAnother(Placement placement, List<BrokenRule> broken) {
        Assignment said = placement.assignment();
        said.board().ifPresent(board -> broken.add(behind(placement, "board " + Phrase.quoted(board))));
        said.output().ifPresent(output -> broken.add(behind(placement, "output " + output)));
    }

    private static BrokenRule behind(Placement placement, String what) {
        return Broken.by(BrokenKind.BEHIND_CONTACTOR)
                .load(placement.id())
                .other(placement.load().comesWith().orElseThrow())
                .word("what", what)
                .at(RuleWords.seatOf(placement))
                .build();
    }

    private static BrokenRule refused(Placement placement, String what) {
        return Broken.by(BrokenKind.NEEDLESS_SWITCHING)
                .load(placement.id())
                .word("what", what)
                .at(RuleWords.seatOf(placement))
                .build();
    }

    private static BrokenRule without(Placement placement, Layout layout) {
        Assignment said = placement.assignment();
        Optional<Board> board = layout.places().switchingBoard(said);
        if (board.isPresent()) {
            int output = said.output().orElseThrow();
            Placement holder = layout.outputs(board.get().id()).get(output);
            return Broken.by(BrokenKind.SHARED_OUTPUT)
                    .load(placement.id())
                    .other(holder.id())
                    .board(board.get().id())
                    .word("output", output)
                    .at("board " + board.get().id() + " output " + output)
                    .build();
        }
        Broken broken = Broken.by(BrokenKind.NO_OUTPUT).load(placement.id());
        said.board().ifPresent(broken::board);
        return broken.panel(said.panel())
                .word("missing", missing(said, layout))
                .at(RuleWords.seatOf(placement))
                .build();
    }

    private static String missing(Assignment said, Layout layout) {
        if (said.board().isEmpty()) {
            return "has no board";
        }
        String name = said.board().get();
        Optional<Board> board = layout.index().board(name);
        if (board.isEmpty()) {
            return "the project has no board " + Phrase.quoted(name);
        }
        String outputs = "board " + Phrase.quoted(name) + " has outputs 1 to "
                + layout.index().typeOf(board.get()).outputs();
        return said.output().isPresent()
                ? outputs + ", not " + said.output().getAsInt()
                : "has no output (" + outputs + ")";
    }
}
