package evenrise.solver.intake;

import java.util.Optional;

/**
 * What a list says of a piece's circuit.
 *
 * @param names of circuits; empty where the list states none; pieces with the same name share a breaker
 * @param breaker that the list states
 */
record ListedCircuit(CircuitNames names, Optional<StatedBreaker> breaker) {
    static final ListedCircuit NONE = new ListedCircuit(CircuitNames.NONE, Optional.empty());

    /** Whether the list decides what is on its breaker. */
    boolean isStated() {
        return breaker.isPresent() || !names.all().isEmpty();
    }
}
