package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** A board gets another setting, and its loads the outputs nearest to their present times. */
final class BoardReset implements Neighbourhood {
    private final Lattice lattice;

    BoardReset(PlanSums sums) {
        lattice = new Lattice(sums);
    }

    @Override
    public boolean unsettles() {
        return true;
    }

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        Output output = sums.outputOf(targets.load(random));
        if (output == null) {
            return false;
        }
        BoardOrder order = new BoardOrder(sums, output.board());
        lattice.follow(order.loads(), output.board(), random, draft);
        return draft.keepsRanges();
    }
}
