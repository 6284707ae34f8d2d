package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;

/** From one plan to another in a single change. */
final class Jump {
    private Jump() {}

    static void to(PlanSnapshot plan, PlanSums sums, DraftMove draft) {
        for (int load = 0; load < plan.loadCount(); load++) {
            if (sums.placeOf(load) != plan.placeOf(load)) {
                draft.place(load, plan.placeOf(load));
            }
            if (sums.outputOf(load) != plan.outputOf(load)) {
                draft.wire(load, plan.outputOf(load));
                draft.time(load, plan.time(load));
            } else if (sums.timeOf(load) != plan.time(load)) {
                draft.time(load, plan.time(load));
            }
        }
        for (int board = 0; board < plan.boardCount(); board++) {
            if (sums.clock().startDelay(board) != plan.startDelay(board)
                    || sums.clock().step(board) != plan.step(board)) {
                draft.set(board, plan.startDelay(board), plan.step(board));
            }
        }
    }
}
