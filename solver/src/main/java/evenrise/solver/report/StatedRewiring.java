package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Metrics;
import evenrise.model.rules.Layout;
import java.util.Optional;

/**
 * Moves against an earlier plan that a plan file states, where an audit was given none to count them from: whether they are
 * right is not shown, and its objective is held against what follows with them.
 *
 * @param amps what they cost of the objective
 */
record StatedRewiring(int count, double amps) {
    /** Empty where the file states none, or the audit counts them itself. */
    static Optional<StatedRewiring> of(Layout layout, Metrics recomputed) {
        return layout.plan()
                .metrics()
                .filter(stated -> stated.movedBreakers().isPresent()
                        && recomputed.movedBreakers().isEmpty())
                .map(stated -> stated.movedBreakers().orElse(0)
                        + stated.movedLeads().orElse(0)
                        + stated.movedSettings().orElse(0))
                .map(count -> new StatedRewiring(
                        count, count * layout.project().objective().move()));
    }

    String words() {
        return "The plan file counts " + Phrase.counted(count, "move") + " against an earlier plan, "
                + Numbers.fixed(amps, 2)
                + " of its objective; none was given here, so that the objective above is without them. 'evenrise audit"
                + " --from' counts them.";
    }
}
