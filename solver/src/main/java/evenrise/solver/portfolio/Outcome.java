package evenrise.solver.portfolio;

import evenrise.model.plan.Assessment;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What came of one project in one variant by one seed.
 *
 * @param project what the project is called among the others
 * @param key of the task whose answer it is; empty where there was no task
 * @param price of the variant's bill, of everything that has one; empty without a catalogue
 * @param found figures of the plan; empty where there is none
 * @param failure why not
 */
public record Outcome(
        String project,
        String variant,
        int seed,
        Optional<String> key,
        OptionalDouble price,
        Optional<Found> found,
        Optional<String> failure) {

    /**
     * A plan's figures; the plan itself stays where it landed, since thousands of them would not fit into memory.
     *
     * @param gapPercent how far the objective is above what is proven
     */
    public record Found(Metrics metrics, Assessment assessment, OptionalDouble gapPercent) {
        /** @throws java.util.NoSuchElementException where the plan is not judged */
        public static Found of(Plan plan) {
            return new Found(plan.metrics().orElseThrow(), plan.assessment().orElseThrow(), plan.gapPercent());
        }
    }

    /** Whether there is a plan that keeps every hard rule. */
    public boolean keepsRules() {
        return found.filter(each -> each.assessment().hardRulesBroken() == 0).isPresent();
    }

    /** Whether it breaks no electrical limit, either. */
    public boolean isSound() {
        return keepsRules() && found.orElseThrow().assessment().limitsBroken() == 0;
    }

    /** What is minimised; infinite without a plan. */
    public double objective() {
        return found.map(each -> each.metrics().objective()).orElse(Double.POSITIVE_INFINITY);
    }
}
