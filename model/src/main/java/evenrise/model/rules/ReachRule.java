package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import java.util.ArrayList;
import java.util.List;

/** A load's panel is one that its board reaches. */
final class ReachRule implements Rule {
    @Override
    public String id() {
        return "reach";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            placement
                    .board()
                    .filter(board ->
                            !board.reaches().contains(placement.assignment().panel()))
                    .ifPresent(board -> broken.add(Broken.by(BrokenKind.OUT_OF_REACH)
                            .load(placement.id())
                            .panel(placement.assignment().panel())
                            .board(board.id())
                            .word("reached", RuleWords.quoted(board.reaches()))
                            .at(RuleWords.seatOf(placement))
                            .build()));
        }
        return broken;
    }
}
