package evenrise.solver.engine.search;

import evenrise.solver.engine.state.PlanSums;
import java.util.function.Consumer;

/**
 * A change of a plan and what takes it back. Both only say what is to be; the sums settle on their own.
 *
 * @param make says the change
 * @param undo says what was before
 */
public record PlainMove(Consumer<PlanSums> make, Consumer<PlanSums> undo) {
    static final PlainMove NOTHING = new PlainMove(sums -> {}, sums -> {});
}
