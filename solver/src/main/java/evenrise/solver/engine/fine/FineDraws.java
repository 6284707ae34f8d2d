package evenrise.solver.engine.fine;

import java.util.SplittableRandom;

/** One kind of small change, drawn by chance. */
interface FineDraws {
    /** Draws a change into an empty one; false where it leads nowhere. */
    boolean draw(FineChange change, SplittableRandom random);
}
