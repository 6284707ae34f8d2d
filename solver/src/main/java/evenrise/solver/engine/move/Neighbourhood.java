package evenrise.solver.engine.move;

import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;

/** A way to change a plan a little without breaking what the search never breaks: one load a slot and an output. */
public interface Neighbourhood {
    /**
     * Draws one change into the sketch.
     *
     * @return false where the draw led nowhere; the sketch is then worthless
     */
    boolean draw(Situation situation, Aim aim, SplittableRandom random, Sketch sketch);
}
