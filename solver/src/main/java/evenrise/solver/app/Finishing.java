package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.MadeByBuilder;
import evenrise.model.plan.Plan;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/** The one way in which every job completes, signs and judges what a search found. */
final class Finishing {
    private Finishing() {}

    /**
     * What a search found, or a plan near it, completed and judged.
     *
     * @param projectSha256 of the project's file
     * @param outcome says what made it
     * @param bare the plan, maybe another than that of the outcome
     * @param proven what is known of the project without a search; computed where empty
     */
    static Evaluation evaluated(
            String projectSha256,
            PlanningRequest request,
            PlanningOutcome outcome,
            Plan bare,
            Optional<Bounds> proven) {
        return Evaluation.finished(
                request.project(),
                bare,
                madeBy(projectSha256, request, outcome),
                bounds(request, outcome, proven),
                request.from());
    }

    /** Bounds from short arguments, and of the objective what the search has proven, where that is more. */
    private static Bounds bounds(PlanningRequest request, PlanningOutcome outcome, Optional<Bounds> proven) {
        Bounds usual = proven.orElseGet(() -> ProvenBounds.of(request.project()));
        return usual.withObjective(Math.max(usual.objective(), outcome.provenObjective()));
    }

    /** Who makes a plan that is still searched for. */
    static MadeBy unfinished(String projectSha256, PlanningRequest request) {
        return maker(projectSha256, request).build();
    }

    private static MadeBy madeBy(String projectSha256, PlanningRequest request, PlanningOutcome outcome) {
        boolean isTimed = request.budget() instanceof Budget.Time;
        return maker(projectSha256, request)
                .movesAllowed(
                        request.budget() instanceof Budget.Moves moves
                                ? OptionalLong.of(moves.limit())
                                : OptionalLong.empty())
                .timeUsedSeconds(isTimed ? OptionalDouble.of(outcome.seconds()) : OptionalDouble.empty())
                .build();
    }

    private static MadeByBuilder maker(String projectSha256, PlanningRequest request) {
        return MadeBy.builder()
                .softwareVersion(ProgramVersion.ofThisProgram())
                .projectSha256(projectSha256)
                .seed(request.seed())
                .threads(request.threads())
                .placesAll(request.placesAll() ? Optional.of(true) : Optional.empty());
    }
}
