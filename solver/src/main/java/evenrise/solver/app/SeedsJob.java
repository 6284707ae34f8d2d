package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.portfolio.PlanTask;
import evenrise.solver.report.SeedsText;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** One project by many seeds: every search for itself, here or on other machines, and the best plan of all. */
final class SeedsJob {
    private static final String ENDING = ".plan.json";

    /** The best first: broken rules, broken limits, the objective; of equals the lower seed. */
    private static final Comparator<Outcome.Found> BEST_FIRST = Comparator.comparingInt(
                    (Outcome.Found each) -> each.assessment().hardRulesBroken())
            .thenComparing(each -> each.assessment().limitsBroken() > 0)
            .thenComparingDouble(each -> each.metrics().objective());

    private final PlannerSource planners;
    private final PlanRequest request;
    private final ManySeeds manySeeds;
    private final JobControl control;
    private final Watch watch;
    private final long startNanos = System.nanoTime();

    SeedsJob(PlannerSource planners, PlanRequest request, ManySeeds manySeeds, JobControl control, Watch watch) {
        this.planners = planners;
        this.request = request;
        this.manySeeds = manySeeds;
        this.control = control;
        this.watch = watch;
    }

    PlanResult run() {
        refuseWhatIsForOneSearch();
        ProjectBytes bytes = ProjectBytes.of(request.project());
        Reading<Project> read = Inputs.project(bytes.source(), watch.notes());
        Project project = read.value().orElseThrow();
        request.target().check(inputs());
        Optional<Plan> earlier = request.from().map(source -> Inputs.earlierPlan(source, project, watch.notes()));
        Optional<DocumentFiles> documents =
                request.documents().map(set -> new DocumentFiles(set, inputs(), watch.notes()));
        documents.ifPresent(DocumentFiles::refuseWhatIsNotOurs);
        List<String> findings = Inputs.findings(read);
        findings.forEach(finding -> watch.notes().accept(request.project().name() + ": " + finding));
        QuietLibraries.hush();
        Map<Long, GridJob> jobs = jobs(bytes, earlier);
        try (KeptAnswers<Outcome.Found> answers =
                KeptAnswers.in(request.target().answers(), ENDING, FoundPlans::read)) {
            search(answers, List.copyOf(jobs.values()));
            watch.at(Stage.JUDGING);
            PlanResult result = best(answers, jobs, project, earlier, findings);
            watch.at(Stage.WRITING);
            request.target().write(result.plan());
            documents.ifPresent(files -> files.write(result.evaluation(), read.sha256(), Optional.empty(), List.of()));
            if (answers.landed() == jobs.size()) {
                answers.clear();
            }
            return result;
        }
    }

    private void refuseWhatIsForOneSearch() {
        if (request.resumes()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "searches by many seeds or on other machines go on where they ended, without --resume.");
        } else if (!request.few().isAny()
                || !request.patience().isAny()
                || request.changes().isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "--changes, --max-moves, --per-move, --gap and --no-gain are for one search on this machine. Leave"
                            + " them, or --seeds and --grid, away.");
        }
    }

    private List<Source> inputs() {
        List<Source> inputs = new ArrayList<>(List.of(request.project()));
        request.from().ifPresent(inputs::add);
        return inputs;
    }

    private Map<Long, GridJob> jobs(ProjectBytes project, Optional<Plan> earlier) {
        Optional<byte[]> from = earlier.map(plan -> ReworkFolder.bytes(out -> PlanFile.write(plan, out, Format.JSON)));
        long moves = ManySeeds.moves(request.effort());
        Map<Long, GridJob> jobs = new LinkedHashMap<>();
        for (long seed : manySeeds.seedsOf(request.effort())) {
            PlanTask task = new PlanTask(
                    ProgramVersion.ofThisProgram(),
                    project.name(),
                    project.bytes(),
                    seed,
                    moves,
                    from,
                    request.placesAll());
            jobs.put(seed, new GridJob(task.key(), "seed " + seed, task.bytes()));
        }
        return jobs;
    }

    private void search(KeptAnswers<Outcome.Found> answers, List<GridJob> jobs) {
        StopSignal stop = new StopSignal();
        List<GridJob> open = answers.open(jobs);
        control.cancellation().whenCancelled(stop::stop);
        watch.at(Stage.SEARCHING);
        WorkGrid grid =
                Grids.of(manySeeds.grid(), ManySeeds.slots(request.effort()), new PlanWork(planners), watch.notes());
        answers.run(grid, open, stop, FoundPlans.WORDS, watch::part);
        answers.failures(jobs).forEach(why -> watch.notes().accept(why + ". The same command tries it again."));
        if (answers.landed() == 0) {
            throw control.cancellation().isCancelled()
                    ? new JobFailed(
                            JobFailed.Reason.CANCELLED, "ended before the first search had; there is nothing to write.")
                    : new JobFailed(JobFailed.Reason.INPUT, "no search has found a plan.");
        }
    }

    private PlanResult best(
            KeptAnswers<Outcome.Found> answers,
            Map<Long, GridJob> jobs,
            Project project,
            Optional<Plan> earlier,
            List<String> findings) {
        Map<Long, Outcome.Found> found = new LinkedHashMap<>();
        jobs.forEach((seed, job) -> answers.found(job.key()).ifPresent(it -> found.put(seed, it)));
        // By rising seed: of equals the first counts.
        long best = found.keySet().stream()
                .min(Comparator.comparing(found::get, BEST_FIRST))
                .orElseThrow();
        Plan plan = PlanFile.read(answers.bytes(jobs.get(best).key()), "an answer")
                .value()
                .orElseThrow();
        Evaluation evaluation = Evaluation.of(
                Layout.of(project, plan), () -> plan.bounds().orElseGet(() -> ProvenBounds.of(project)), earlier);
        SearchSpent spent = new SearchSpent(
                (System.nanoTime() - startNanos) / 1e9,
                found.size() * ManySeeds.moves(request.effort()),
                best,
                1,
                OptionalDouble.empty(),
                control.cancellation().isCancelled(),
                Optional.empty(),
                SeedsText.sentence(best, jobs.size(), found));
        return new PlanResult(evaluation, evaluation.plan(), findings, spent);
    }
}
