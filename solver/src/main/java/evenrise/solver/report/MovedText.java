package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** How much a plan moves of the one that it was made from, in a sentence. */
final class MovedText {
    private MovedText() {}

    /** Empty where there is no earlier plan. */
    static Optional<String> of(Evaluation evaluation) {
        Metrics metrics = evaluation.verdict().metrics();
        return evaluation
                .earlier()
                .map(earlier -> "From the earlier plan: moved "
                        + metrics.movedBreakers().orElse(0) + " of "
                        + both(evaluation, earlier, false) + " loads, leads "
                        + metrics.movedLeads().orElse(0) + " of " + both(evaluation, earlier, true) + ", settings "
                        + metrics.movedSettings().orElse(0) + ".");
    }

    /** Loads that both plans place; or those of them that either switches by a lead of their own. */
    private static long both(Evaluation evaluation, Plan earlier, boolean onOutputs) {
        Map<String, Assignment> had = earlier.assignments().stream()
                .collect(Collectors.toMap(Assignment::load, Function.identity(), (first, second) -> first));
        List<Assignment> has = evaluation.layout().plan().assignments();
        return has.stream()
                .filter(each -> had.containsKey(each.load()))
                .filter(each -> !onOutputs
                        || each.board().isPresent()
                        || had.get(each.load()).board().isPresent())
                .map(Assignment::load)
                .distinct()
                .count();
    }
}
