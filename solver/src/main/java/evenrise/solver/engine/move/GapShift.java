package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** A free output moves along its board: the loads between its old and its new position move one output over. */
final class GapShift implements Neighbourhood {
    private static final int TRIES = 4;

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Plant plant = situation.plant;
        Output from = situation.outputOf(aim.load(random));
        if (from == null) {
            return false;
        }
        int first = plant.firstOutput[from.board()];
        int outputs = plant.outputCount(from.board());
        for (int i = 0; i < TRIES; i++) {
            int gap = first + random.nextInt(outputs);
            if (situation.loadOnOutput(gap) == Plant.NONE) {
                int direction = Integer.signum(from.index() - gap);
                for (int k = gap + direction; k != from.index() + direction; k += direction) {
                    int load = situation.loadOnOutput(k);
                    if (load != Plant.NONE) {
                        sketch.wire(load, plant.outputs.get(k - direction));
                    }
                }
                return sketch.keepsRanges();
            }
        }
        return false;
    }
}
