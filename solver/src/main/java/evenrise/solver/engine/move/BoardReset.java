package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** A board gets another setting, and its loads the outputs nearest to their present times. */
final class BoardReset implements Neighbourhood {
    private final Lattice lattice;

    BoardReset(Situation situation) {
        lattice = new Lattice(situation);
    }

    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Output output = situation.outputOf(aim.load(random));
        if (output == null) {
            return false;
        }
        BoardOrder order = new BoardOrder(situation, output.board());
        lattice.follow(order.loads(), output.board(), random, sketch);
        return sketch.keepsRanges();
    }
}
