package evenrise.model.rules;

import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Board;
import evenrise.model.project.OffTiming;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A load that goes off late is on a board whose outputs have off times of their own. */
final class OffDelayRule implements Rule {
    @Override
    public String id() {
        return "off-delay";
    }

    @Override
    public List<BrokenRule> broken(Layout layout) {
        List<BrokenRule> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            double late = layout.clocks().offAfterSeconds(placement.load());
            Optional<Board> board = placement
                    .load()
                    .comesWith()
                    .map(layout::placement)
                    .orElse(Optional.of(placement))
                    .flatMap(Placement::board);
            if (placement.isSequenced() && late > 0 && board.isPresent()) {
                if (layout.index().typeOf(board.get()).off() == OffTiming.MIRROR) {
                    broken.add(Broken.by(BrokenKind.MIRRORED_OFF)
                            .load(placement.id())
                            .board(board.get().id())
                            .at("board " + board.get().id())
                            .figure(late, "s")
                            .build());
                }
            }
        }
        return broken;
    }
}
