package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.PlanFile;
import evenrise.model.file.WriteFailed;
import evenrise.solver.grid.AnswerFolder;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.portfolio.PlanTask;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;

/** A portfolio from request to written folder: what has landed before is not done again. */
final class PortfolioJob {
    private static final String ANSWERS = "answers";
    private static final String ENDING = ".plan.json";

    private final PlannerSource planners;
    private final PortfolioRequest request;
    private final JobControl control;
    private final Watch watch;
    private final StopSignal stop = new StopSignal();
    private final Map<String, Outcome.Found> found = new HashMap<>();
    private final Map<String, String> failed = new HashMap<>();

    /** One plan that is wanted, and the task that finds it. */
    private record Wanted(PlannedVariant variant, int seed, Optional<PlanTask> task, Optional<String> key) {}

    PortfolioJob(PlannerSource planners, PortfolioRequest request, JobControl control, Watch watch) {
        this.planners = planners;
        this.request = request;
        this.control = control;
        this.watch = watch;
    }

    PortfolioResult run() {
        PortfolioInput input = PortfolioInput.of(request, watch.notes());
        List<PlannedVariant> variants = variants(input);
        List<Wanted> wanted = wanted(input, variants);
        QuietLibraries.hush();
        try (AnswerFolder answers = held()) {
            Map<String, GridJob> open = open(wanted, answers);
            int landed = found.size();
            control.cancellation().whenCancelled(stop::stop);
            watch.at(Stage.SEARCHING);
            int slots = request.slots().orElse(Runtime.getRuntime().availableProcessors());
            WorkGrid grid = Grids.of(request.grid(), slots, new PlanWork(planners), watch.notes());
            search(grid, List.copyOf(open.values()), (job, answer) -> land(answers, job, answer, open.size()));
            watch.at(Stage.WRITING);
            List<Outcome> outcomes =
                    wanted.stream().flatMap(each -> outcome(each).stream()).toList();
            PortfolioResult result = new PortfolioResult(
                    outcomes,
                    wanted.size(),
                    landed,
                    grid.slots(),
                    input.moves(),
                    PriceRemarks.of(variants),
                    control.cancellation().isCancelled());
            new PortfolioFolder(request.folder()).write(result, variants, key -> bytes(answers, key));
            return result;
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, String.valueOf(e.getMessage()));
        }
    }

    /** What has landed stays where the workers are lost; the same command goes on. */
    private void search(WorkGrid grid, List<GridJob> jobs, BiConsumer<GridJob, GridAnswer> landed) {
        try {
            grid.run(jobs, landed, stop);
        } catch (GridUnavailable e) {
            throw new JobFailed(
                    JobFailed.Reason.GRID,
                    e.getMessage() + " " + Phrase.counted(found.size(), "plan")
                            + " of those asked for kept; the same command goes on.");
        }
    }

    private List<PlannedVariant> variants(PortfolioInput input) {
        List<PlannedVariant> variants = new ArrayList<>();
        input.projects().forEach((name, file) -> {
            List<PlannedVariant> each = PlannedVariant.of(name, file, input.variants());
            each.stream()
                    .flatMap(one -> one.wrong().stream())
                    .distinct()
                    .forEach(text -> watch.notes().accept(name + ": " + text));
            variants.addAll(each);
        });
        return variants;
    }

    private static List<Wanted> wanted(PortfolioInput input, List<PlannedVariant> variants) {
        List<Wanted> wanted = new ArrayList<>();
        for (PlannedVariant variant : variants) {
            for (int seed : input.seeds()) {
                Optional<PlanTask> task = variant.bytes()
                        .map(bytes -> new PlanTask(
                                ProgramVersion.ofThisProgram(), variant.fileName(), bytes, seed, input.moves()));
                wanted.add(new Wanted(variant, seed, task, task.map(PlanTask::key)));
            }
        }
        return wanted;
    }

    private AnswerFolder held() throws IOException {
        Path folder = request.folder().resolve(ANSWERS);
        return AnswerFolder.held(folder, ENDING)
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.OUTPUT,
                        "another run works in '"
                                + Harmless.shown(request.folder().toString())
                                + "'. Wait for its end, or name another folder."));
    }

    /** What is still to be done, each once. */
    private Map<String, GridJob> open(List<Wanted> wanted, AnswerFolder answers) {
        Map<String, GridJob> open = new LinkedHashMap<>();
        for (Wanted each : wanted) {
            if (each.task().isPresent()) {
                String key = each.key().orElseThrow();
                Optional<Outcome.Found> earlier = answers.answer(key).flatMap(PortfolioJob::read);
                if (earlier.isPresent()) {
                    found.put(key, earlier.get());
                } else {
                    open.put(key, new GridJob(key, name(each), each.task().get().bytes()));
                }
            }
        }
        return open;
    }

    private static String name(Wanted wanted) {
        return wanted.variant().project() + " " + wanted.variant().variant().name() + " seed " + wanted.seed();
    }

    /** Empty where the bytes are no judged plan, as after a disk has failed: the task is done again then. */
    private static Optional<Outcome.Found> read(byte[] answer) {
        return PlanFile.read(answer, "an answer")
                .value()
                .filter(plan -> plan.metrics().isPresent() && plan.assessment().isPresent())
                .map(Outcome.Found::of);
    }

    private void land(AnswerFolder answers, GridJob job, GridAnswer answer, int all) {
        String words;
        Optional<Outcome.Found> figures =
                answer instanceof GridAnswer.Done done ? read(done.output()) : Optional.empty();
        if (answer instanceof GridAnswer.Done done && figures.isPresent()) {
            try {
                answers.land(job.key(), done.output());
            } catch (WriteFailed e) {
                throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
            }
            found.put(job.key(), figures.get());
            words = words(figures.get());
        } else {
            words = answer instanceof GridAnswer.Failed failure
                    ? failure.cause().words() + ": " + failure.words()
                    : "unexpected failure: what came back is no plan";
            failed.put(job.key(), words);
        }
        watch.part(new JobPart(found.size() + failed.size(), all, job.name(), words));
    }

    private static String words(Outcome.Found figures) {
        return String.format(
                Locale.ROOT,
                "objective %.1f  peak %.1f A  %s",
                figures.metrics().objective(),
                figures.metrics().peakInrushAmps(),
                figures.assessment().headline());
    }

    /** Empty where it was not come to. */
    private Optional<Outcome> outcome(Wanted wanted) {
        Optional<Outcome.Found> figures = wanted.key().map(found::get);
        Optional<String> failure =
                wanted.variant().failure().or(() -> wanted.key().map(failed::get));
        if (figures.isEmpty() && failure.isEmpty()) {
            return Optional.empty();
        }
        PlannedVariant variant = wanted.variant();
        OptionalDouble price = variant.price();
        return Optional.of(new Outcome(
                variant.project(), variant.variant().name(), wanted.seed(), wanted.key(), price, figures, failure));
    }

    private static byte[] bytes(AnswerFolder answers, String key) {
        return answers.answer(key).orElseThrow();
    }
}
