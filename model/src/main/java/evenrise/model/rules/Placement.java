package evenrise.model.rules;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One load of the project as a plan has it.
 *
 * @param assignment the plan's word on it, the last where there are several
 * @param panel that it sits in; empty where the project has no such panel
 * @param slots that its breaker takes; empty where it does not fit
 * @param phases of those slots, in their order
 * @param board that switches it; empty where it has no output of its own
 * @param onSeconds nominal time of that output, or of the load behind whose contactor it is; empty where there is none
 */
public record Placement(
        Load load,
        Assignment assignment,
        Optional<Panel> panel,
        List<Integer> slots,
        List<Phase> phases,
        Optional<Board> board,
        OptionalDouble onSeconds) {

    public String id() {
        return load.id();
    }

    /** Whether its breaker fits where the plan has it, whatever else is there. */
    public boolean fits() {
        return !slots.isEmpty();
    }

    /** Whether it has an output, or shares another's by a contactor, hence a switch-on time. */
    public boolean isSequenced() {
        return onSeconds.isPresent();
    }

    /** Its switch-on time; ask only what {@link #isSequenced()}. */
    double on() {
        return onSeconds.orElseThrow();
    }

    /** Whether it is behind the contactor of another load. */
    public boolean isBehindAnother() {
        return load.comesWith().isPresent();
    }

    /** Output of its board; ask only what has a board. */
    int output() {
        return assignment.output().orElseThrow();
    }

    /** When what depends on it may come on; ask only what {@link #isSequenced()}. */
    double settledSeconds() {
        return on() + load.settleSeconds();
    }
}
