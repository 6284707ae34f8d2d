package evenrise.solver.compare;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import java.util.Optional;

/**
 * What came of a scenario.
 *
 * @param plan finished
 * @param why the search found no plan that keeps every rule; empty where it did
 */
public record ScenarioResult(Scenario scenario, Plan plan, Optional<String> why) {
    static ScenarioResult of(Scenario scenario, Plan plan) {
        int broken = plan.violations().size();
        return new ScenarioResult(
                scenario,
                plan,
                broken == 0
                        ? Optional.empty()
                        : Optional.of("not found: " + Phrase.counted(broken, "place") + " still broken"));
    }

    /** Whether its plan keeps every hard rule. */
    public boolean isSound() {
        return why.isEmpty();
    }

    /** Of a sound finding. */
    public Metrics metrics() {
        return plan.metrics().orElseThrow();
    }
}
