package evenrise.model.rules;

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
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
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
                    broken.add("load " + Say.quoted(placement.id()) + " is to go off " + Say.seconds(late)
                            + " late, but board " + Say.quoted(board.get().id())
                            + " only mirrors its switching on. Maybe move it to a board whose off is each.");
                }
            }
        }
        return broken;
    }
}
