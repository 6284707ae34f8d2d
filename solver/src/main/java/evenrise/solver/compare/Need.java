package evenrise.solver.compare;

import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * A sum that a choice of things has to reach: slots, amperes, outputs.
 *
 * @param amount to be reached
 * @param of what one thing of a kind adds
 * @param apart name of needs of which no kind adds to two, so that what they cost can be summed
 */
record Need<K>(double amount, ToDoubleFunction<K> of, Optional<String> apart) {
    /** What sums of currents forgive, and roundings. */
    static final double FORGIVEN = 1e-6;

    boolean isMet(double sum) {
        return sum >= amount - FORGIVEN;
    }
}
