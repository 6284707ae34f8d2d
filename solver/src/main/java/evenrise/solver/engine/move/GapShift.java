package evenrise.solver.engine.move;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** A free output moves along its board: the loads between its old and its new position move one output over. */
final class GapShift implements Neighbourhood {
    private static final int TRIES = 4;

    @Override
    public boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft) {
        CompiledProject compiled = sums.compiled;
        Output from = sums.outputOf(targets.load(random));
        if (from == null || compiled.times[from.board()] != null) {
            return false;
        }
        int first = compiled.firstOutput[from.board()];
        int outputs = compiled.outputCount(from.board());
        for (int i = 0; i < TRIES; i++) {
            int gap = first + random.nextInt(outputs);
            if (sums.loadOnOutput(gap) == CompiledProject.NONE) {
                int direction = Integer.signum(from.index() - gap);
                for (int k = gap + direction; k != from.index() + direction; k += direction) {
                    int load = sums.loadOnOutput(k);
                    if (load != CompiledProject.NONE) {
                        draft.wire(load, compiled.outputs.get(k - direction));
                    }
                }
                return draft.keepsRanges();
            }
        }
        return false;
    }
}
