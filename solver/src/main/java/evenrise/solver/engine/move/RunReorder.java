package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** Two neighbouring runs of a board change places, or a run moves to the front of another one further off. */
final class RunReorder implements Neighbourhood {
    @Override
    public boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch) {
        Output output = situation.outputOf(aim.load(random));
        if (output == null) {
            return false;
        }
        BoardOrder order = new BoardOrder(situation, output.board());
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
        order.layOut(sketch);
        return sketch.keepsRanges();
    }
}
