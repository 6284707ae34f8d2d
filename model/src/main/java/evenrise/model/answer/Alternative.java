package evenrise.model.answer;

import evenrise.model.plan.BrokenRule;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A change of a plan that brings one load elsewhere, judged.
 *
 * @param seat of the load then
 * @param phases of its poles then, in the order of its slots; none where it would not fit
 * @param onSeconds when it would come on; empty where it would not
 * @param exchangedWith the load that takes its place
 * @param alike how many places there are that differ in the slot's number alone, this one among them
 * @param breaks what the plan so changed breaks and the plan as it is does not
 * @param mends how many places that the plan breaks are kept then
 * @param objectiveChange the objective then less the objective now, A
 * @param peakChangeAmps the supply's peak then less its peak now
 */
public record Alternative(
        PlanChange change,
        Seat seat,
        List<Phase> phases,
        OptionalDouble onSeconds,
        Optional<String> exchangedWith,
        int alike,
        List<BrokenRule> breaks,
        int mends,
        double objectiveChange,
        double peakChangeAmps) {

    public Alternative {
        phases = List.copyOf(phases);
        breaks = List.copyOf(breaks);
    }

    /** Whether it breaks nothing that the plan keeps. */
    public boolean isSound() {
        return breaks.isEmpty();
    }
}
