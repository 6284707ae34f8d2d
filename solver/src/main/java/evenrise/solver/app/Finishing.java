package evenrise.solver.cli;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Reading;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.MadeByBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.report.Paint;
import evenrise.solver.report.SearchFacts;
import evenrise.solver.report.SummaryText;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * A finished plan with what is to be said of it and how it came about.
 *
 * @param findings what the project itself makes impossible
 */
record Planned(Evaluation evaluation, Plan plan, List<String> findings, SearchFacts search) {

    static Planned of(
            Reading<Project> read,
            PlanningRequest request,
            PlanningOutcome outcome,
            Optional<Bounds> proven,
            boolean wasInterrupted) {
        Evaluation evaluation = evaluated(read, request, outcome, outcome.plan(), proven);
        SearchFacts search = new SearchFacts(
                outcome.seconds(),
                outcome.moves(),
                request.seed(),
                request.threads(),
                outcome.firstFeasibleSeconds(),
                wasInterrupted);
        return new Planned(evaluation, evaluation.plan(), Inputs.findings(read), search);
    }

    /** A bare plan completed, signed and judged; {@code outcome} says what made it. */
    static Evaluation evaluated(
            Reading<Project> read,
            PlanningRequest request,
            PlanningOutcome outcome,
            Plan bare,
            Optional<Bounds> proven) {
        return Evaluation.finished(
                request.project(),
                bare,
                madeBy(read, request, outcome),
                bounds(request, outcome, proven),
                request.from());
    }

    /** Bounds from short arguments, without a search. */
    static Bounds usualBounds(Project project) {
        return ProvenBounds.of(project);
    }

    /** Bounds from short arguments, and of the objective what the search has proven, where that is more. */
    private static Bounds bounds(PlanningRequest request, PlanningOutcome outcome, Optional<Bounds> proven) {
        Bounds usual = proven.orElseGet(() -> ProvenBounds.of(request.project()));
        return usual.withObjective(Math.max(usual.objective(), outcome.provenObjective()));
    }

    List<String> summary(Paint paint) {
        return SummaryText.lines(evaluation, findings, search, paint);
    }

    /** @param isStrict whether a check that was not made counts as one that failed */
    int exitCode(boolean isStrict) {
        if (search.wasInterrupted()) {
            return ExitCode.INTERRUPTED;
        }
        return ExitCode.of(evaluation.assessment(), isStrict);
    }

    /** Who makes a plan that is still searched for. */
    static MadeBy unfinished(Reading<Project> read, PlanningRequest request) {
        return maker(read, request).build();
    }

    private static MadeBy madeBy(Reading<Project> read, PlanningRequest request, PlanningOutcome outcome) {
        boolean isTimed = request.budget() instanceof Budget.Time;
        return maker(read, request)
                .movesAllowed(
                        request.budget() instanceof Budget.Moves moves
                                ? OptionalLong.of(moves.limit())
                                : OptionalLong.empty())
                .timeUsedSeconds(isTimed ? OptionalDouble.of(outcome.seconds()) : OptionalDouble.empty())
                .build();
    }

    private static MadeByBuilder maker(Reading<Project> read, PlanningRequest request) {
        return MadeBy.builder()
                .softwareVersion(Evenrise.Version.ofThisProgram())
                .projectSha256(read.sha256())
                .seed(request.seed())
                .threads(request.threads())
                .placesAll(request.placesAll() ? Optional.of(true) : Optional.empty());
    }
}
