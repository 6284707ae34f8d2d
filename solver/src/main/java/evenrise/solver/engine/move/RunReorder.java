package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** Two neighbouring runs of a board change places, or a run moves to the front of another one further off. */
final class RunReorder implements Neighbourhood {
    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        Output output = sums.outputOf(targets.load(random));
        if (output == null || isAnyOrderAlike(sums, output.board())) {
            return false;
        }
        BoardOrder order = new BoardOrder(sums, output.board());
        if (order.size() < 2) {
            return false;
        }
        int from = order.runStart(random.nextInt(order.size()));
        int middle = order.runEnd(from);
        if (middle == order.size()) {
            return false;
        }
        int far = random.nextBoolean() ? middle : middle + random.nextInt(order.size() - middle);
        order.rotate(from, middle, order.runEnd(far));
        order.layOut(draft);
        return draft.keepsRanges();
    }

    /** Where each output has a time of its own, order counts only for groups that are interrupted. */
    private static boolean isAnyOrderAlike(PlanSums sums, int board) {
        return sums.compiled.times[board] != null && !sums.isInterrupted(board);
    }
}
