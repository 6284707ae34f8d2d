package evenrise.solver.compare;

import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import java.util.Optional;

/**
 * What came of a scenario.
 *
 * @param plan finished; empty where no plan was sought, as none can be
 * @param why where there is no plan that keeps every rule: what makes it impossible, or that the search found none
 */
public record Finding(Scenario scenario, Optional<Plan> plan, Optional<String> why, boolean isProvenImpossible) {
    static Finding impossible(Scenario scenario, String why) {
        return new Finding(scenario, Optional.empty(), Optional.of(why), true);
    }

    static Finding of(Scenario scenario, Plan plan) {
        int broken = plan.violations().size();
        return new Finding(
                scenario,
                Optional.of(plan),
                broken == 0 ? Optional.empty() : Optional.of("not found: " + broken + " places still broken"),
                false);
    }

    /** Whether its plan keeps every hard rule. */
    public boolean isSound() {
        return why.isEmpty();
    }

    /** Of a sound finding. */
    public Metrics metrics() {
        return plan.orElseThrow().metrics().orElseThrow();
    }
}
