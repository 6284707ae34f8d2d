package evenrise.model.rules;

import java.util.ArrayList;
import java.util.List;

/** A load's panel is one that its board reaches. */
final class ReachRule implements Rule {
    @Override
    public String id() {
        return "reach";
    }

    @Override
    public List<String> broken(Layout layout) {
        List<String> broken = new ArrayList<>();
        for (Placement placement : layout.placements()) {
            placement
                    .board()
                    .filter(board ->
                            !board.reaches().contains(placement.assignment().panel()))
                    .ifPresent(board -> broken.add("load " + Say.quoted(placement.id()) + " in panel "
                            + Say.panelOf(placement) + " is on board " + Say.quoted(board.id())
                            + ", which reaches only " + Say.quoted(board.reaches())
                            + ". Maybe move the load to such a panel, or to a board that reaches its own."));
        }
        return broken;
    }
}
