package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Reading;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.report.AnnealingsText;
import evenrise.solver.tidy.Tidying;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One search from request to written plan; a cancellation shortens the search and nothing else. */
final class PlanJob {
    /** Of a search near an earlier plan: the part of its time for a plan that keeps nothing of it. */
    private static final double AS_NEW_PART = 0.4;

    /** How often it is looked at whether nothing better was found for too long. */
    private static final long PATIENCE_MILLIS = 100;

    private final PlannerSource planners;
    private final PlanRequest request;
    private final JobControl control;
    private final Watch watch;

    private record Found(PlanningOutcome outcome, Optional<Bounds> bounds, Optional<String> endedEarly) {}

    PlanJob(PlannerSource planners, PlanRequest request, JobControl control, Watch watch) {
        this.planners = planners;
        this.request = request;
        this.control = control;
        this.watch = watch;
    }

    PlanResult run() {
        Reading<Project> read = Inputs.project(request.project(), watch.notes());
        Project project = read.value().orElseThrow();
        request.target().check(List.of(request.project()));
        Optional<Plan> earlier = start().map(source -> Inputs.earlierPlan(source, project, watch.notes()));
        Optional<DocumentFiles> documents =
                request.documents().map(set -> new DocumentFiles(set, inputs(), watch.notes()));
        documents.ifPresent(DocumentFiles::refuseWhatIsNotOurs);
        List<String> findings = Inputs.findings(read);
        findings.forEach(finding -> watch.notes().accept(request.project().name() + ": " + finding));
        Effort effort = request.effort();
        Budget budget = isTakenAsItIs() ? new Budget.Moves(0) : effort.budget();
        PlanningRequest search = new PlanningRequest(
                project, earlier, budget, effort.seed(), effort.searches(), request.placesAll(), false);
        if (!request.few().isAny() && request.from().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "moves are counted from an earlier plan. Say --from PLAN as well.");
        }
        refuseUselessPatience();
        Found found = request.changes()
                .map(file -> changed(read.sha256(), search, moves(file, read, earlier)))
                .orElseGet(() -> request.few().isAny() ? search(read.sha256(), search.improving()) : near(search));
        PlanResult result = finished(read.sha256(), search, found, findings);
        watch.at(Stage.WRITING);
        request.target().write(result.plan());
        request.target().checkpoint().ifPresent(Checkpoint::remove);
        documents.ifPresent(files -> files.write(result.evaluation(), read.sha256(), Optional.empty(), List.of()));
        return result;
    }

    private PlanResult finished(String sha256, PlanningRequest search, Found found, List<String> findings) {
        watch.at(found.bounds().isPresent() ? Stage.JUDGING : Stage.BOUNDS);
        PlanningOutcome outcome = found.outcome();
        Plan tidy = isTakenAsItIs()
                ? outcome.plan()
                : Tidying.of(
                        search.project(),
                        outcome.plan(),
                        search.from(),
                        request.from().isPresent());
        Evaluation evaluation = Finishing.evaluated(sha256, search, outcome, tidy, found.bounds());
        watch.at(Stage.JUDGING);
        SearchSpent spent = new SearchSpent(
                outcome.seconds(),
                outcome.moves(),
                search.seed(),
                search.threads(),
                outcome.firstFeasibleSeconds(),
                control.cancellation().isCancelled(),
                found.endedEarly(),
                AnnealingsText.sentence(outcome.ends()));
        return new PlanResult(evaluation, evaluation.plan(), findings, spent);
    }

    /** Whether moves of a change file are all that is done. */
    private boolean isTakenAsItIs() {
        return request.changes().isPresent() && request.effort().isUnasked();
    }

    private TakenMoves moves(Source file, Reading<Project> read, Optional<Plan> earlier) {
        if (!request.few().isAny()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "what a change file moves counts as no move. Give --changes without --max-moves and --per-move.");
        }
        Plan plan = earlier.filter(any -> request.from().isPresent())
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "a change file moves loads of a plan. Say --from PLAN as well, the plan that the page was made"
                                + " of."));
        return TakenMoves.of(file, read.value().orElseThrow(), read.sha256(), plan, watch.notes());
    }

    /** Nothing that is proven where loads are pinned holds where they are not: bounds are those of the project. */
    private Found changed(String sha256, PlanningRequest asked, TakenMoves taken) {
        if (isTakenAsItIs()) {
            return new Found(
                    new PlanningOutcome(taken.plan(), 0, 0, OptionalDouble.empty()),
                    Optional.empty(),
                    Optional.empty());
        }
        Found found = search(
                sha256,
                new PlanningRequest(
                                taken.pinned(),
                                Optional.of(taken.plan()),
                                asked.budget(),
                                asked.seed(),
                                asked.threads(),
                                asked.placesAll(),
                                false)
                        .improving());
        PlanningOutcome outcome = found.outcome();
        return new Found(
                new PlanningOutcome(
                        outcome.plan(),
                        outcome.moves(),
                        outcome.seconds(),
                        outcome.firstFeasibleSeconds(),
                        0,
                        outcome.ends()),
                Optional.empty(),
                found.endedEarly());
    }

    private void refuseUselessPatience() {
        if (request.patience().isAny()) {
            return;
        }
        if (request.effort().moves().isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "where moves are counted, the search ends with them, so that the plan is the same each time."
                            + " Say --time in the place of --moves, or leave --gap and --no-gain away.");
        }
        if (!request.few().isAny()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "near an earlier plan the search uses its whole time. Leave --gap and --no-gain away.");
        }
    }

    private List<Source> inputs() {
        List<Source> inputs = new ArrayList<>(List.of(request.project()));
        request.from().ifPresent(inputs::add);
        request.changes().ifPresent(inputs::add);
        return inputs;
    }

    private Found search(String sha256, PlanningRequest asked) {
        CancelSwitch enough = new CancelSwitch();
        EarlyEnd earlyEnd = new EarlyEnd(request.patience(), enough::cancel);
        PlannerSource.Search search = planners.search(
                asked,
                progress -> {
                    watch.report(progress);
                    earlyEnd.take(progress);
                },
                watch.notes());
        enough.whenCancelled(search::stop);
        control.cancellation().whenCancelled(search::stop);
        Optional<CheckpointWriter<Plan>> kept = request.target()
                .checkpoint()
                .map(each -> each.keeping(search::best, Finishing.unfinished(sha256, asked), watch.notes()));
        long start = System.nanoTime();
        Ticker ticker = new Ticker(() -> earlyEnd.at((System.nanoTime() - start) / 1e9), PATIENCE_MILLIS);
        try {
            watch.at(Stage.SEARCHING);
            PlanningOutcome outcome = search.plan();
            return new Found(outcome, search.bounds(), earlyEnd.why());
        } finally {
            ticker.close();
            kept.ifPresent(CheckpointWriter::close);
        }
    }

    /** A part of the budget for a plan as good as new, the rest for plans near the earlier one. */
    private Found near(PlanningRequest asked) {
        long start = System.nanoTime();
        Plan earlier = asked.from().orElseThrow();
        NearbySearch nearby = new NearbySearch(asked.project(), earlier, asked.seed(), watch::report);
        PlannerSource.Search anew =
                planners.search(asked.withBudget(asked.budget().part(AS_NEW_PART)), watch::report, watch.notes());
        control.cancellation().whenCancelled(() -> {
            anew.stop();
            nearby.stop();
        });
        watch.at(Stage.SEARCHING);
        PlanningOutcome outcome = anew.plan();
        nearby.offer(outcome.plan());
        if (!control.cancellation().isCancelled()) {
            nearby.search(asked.budget().part(1 - AS_NEW_PART), asked.threads());
        }
        Plan chosen = new NearEarlier(asked.project(), earlier, request.few(), nearby.plans()).chosen(watch.notes());
        return new Found(
                new PlanningOutcome(
                        chosen,
                        outcome.moves() + nearby.tried(),
                        (System.nanoTime() - start) / 1e9,
                        outcome.firstFeasibleSeconds(),
                        outcome.provenObjective()),
                anew.bounds(),
                Optional.empty());
    }

    /** The plan to start at; says what an earlier search has left. */
    private Optional<Source> start() {
        Optional<Checkpoint> checkpoint = request.target().checkpoint();
        Optional<Path> left = checkpoint.flatMap(Checkpoint::left);
        if (request.resumes() && request.from().isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "--resume and --from both say where to start. Give one of them.");
        }
        if (request.resumes() && left.isEmpty()) {
            watch.notes().accept("no search for this plan was cut off; this one starts anew.");
        }
        if (request.resumes() && left.isPresent()) {
            watch.notes()
                    .accept("goes on from '" + Harmless.shown(left.get().toString())
                            + "', left by a search that was cut off.");
            return left.map(Source::file);
        }
        if (left.isPresent()) {
            Path aside = checkpoint.orElseThrow().putAside();
            watch.notes()
                    .accept("an earlier search for this plan was cut off; its best plan is now '"
                            + Harmless.shown(aside.toString()) + "'. Maybe start at it with --from.");
        }
        return request.from();
    }
}
