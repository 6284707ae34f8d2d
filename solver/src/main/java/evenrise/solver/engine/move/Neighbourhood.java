package evenrise.solver.engine.move;

import evenrise.solver.engine.state.PlanSums;
import java.util.SplittableRandom;

/** A way to change a plan a little without breaking what the search never breaks: one load a slot and an output. */
public interface Neighbourhood {
    /**
     * Draws one change into the draft.
     *
     * @return false where the draw led nowhere; the draft is then worthless
     */
    boolean draw(PlanSums sums, Targets targets, SplittableRandom random, DraftMove draft);

    /** Whether a change seldom pays before what it moved has found other outputs, slots and settings. */
    default boolean unsettles() {
        return false;
    }
}
