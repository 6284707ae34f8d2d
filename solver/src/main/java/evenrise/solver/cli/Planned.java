package evenrise.solver.cli;

import evenrise.model.file.Reading;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.review.ElectricalReview;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
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
 * A finished plan with what the rules say of it and how it came about.
 *
 * @param findings what the project itself makes impossible
 */
record Planned(Project project, List<String> findings, Plan plan, Verdict verdict, SearchFacts search) {

    static Planned of(
            Reading<Project> read,
            PlanningRequest request,
            PlanningOutcome outcome,
            Optional<Bounds> proven,
            boolean wasInterrupted) {
        Plan plan = finished(read, request, outcome, outcome.plan(), proven);
        SearchFacts search = new SearchFacts(
                outcome.seconds(),
                outcome.moves(),
                request.seed(),
                request.threads(),
                outcome.firstFeasibleSeconds(),
                wasInterrupted);
        return new Planned(
                request.project(), Inputs.findings(read), plan, Referee.judge(request.project(), plan), search);
    }

    /** A bare plan completed, reviewed and signed; {@code outcome} says what made it. */
    static Plan finished(
            Reading<Project> read,
            PlanningRequest request,
            PlanningOutcome outcome,
            Plan bare,
            Optional<Bounds> proven) {
        Plan finished = PlanFinisher.finish(
                request.project(), bare, madeBy(read, request, outcome), bounds(request, outcome, proven));
        return finished.withReview(
                Optional.of(ElectricalReview.of(Layout.of(request.project(), finished), request.from())));
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
        return SummaryText.lines(project, findings, plan, verdict, search, paint);
    }

    int exitCode() {
        if (search.wasInterrupted()) {
            return ExitCode.INTERRUPTED;
        }
        return verdict.violations().isEmpty() ? ExitCode.DONE : ExitCode.RULES_BROKEN;
    }

    /** Who makes a plan that is still searched for. */
    static MadeBy unfinished(Reading<Project> read, PlanningRequest request) {
        return new MadeBy(
                Evenrise.Version.ofThisProgram(),
                read.sha256(),
                request.seed(),
                request.threads(),
                OptionalLong.empty(),
                OptionalDouble.empty());
    }

    private static MadeBy madeBy(Reading<Project> read, PlanningRequest request, PlanningOutcome outcome) {
        boolean isTimed = request.budget() instanceof Budget.Time;
        return MadeBy.builder()
                .softwareVersion(Evenrise.Version.ofThisProgram())
                .projectSha256(read.sha256())
                .seed(request.seed())
                .threads(request.threads())
                .movesAllowed(
                        request.budget() instanceof Budget.Moves moves
                                ? OptionalLong.of(moves.limit())
                                : OptionalLong.empty())
                .timeUsedSeconds(isTimed ? OptionalDouble.of(outcome.seconds()) : OptionalDouble.empty())
                .build();
    }
}
