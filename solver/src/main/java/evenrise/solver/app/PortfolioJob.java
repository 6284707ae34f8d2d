package evenrise.solver.app;

import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.portfolio.PlanTask;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A portfolio from request to written folder: what has landed before is not done again. */
final class PortfolioJob {
    static final String ANSWERS = "answers";
    static final String ENDING = ".plan.json";

    private final PlannerSource planners;
    private final PortfolioRequest request;
    private final JobControl control;
    private final Watch watch;
    private final StopSignal stop = new StopSignal();

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
        try (KeptAnswers<Outcome.Found> answers =
                KeptAnswers.in(request.folder().resolve(ANSWERS), ENDING, FoundPlans::read)) {
            List<GridJob> open = answers.open(jobs(wanted));
            int landed = answers.landed();
            control.cancellation().whenCancelled(stop::stop);
            watch.at(Stage.SEARCHING);
            int slots = request.slots().orElse(Runtime.getRuntime().availableProcessors());
            WorkGrid grid = Grids.of(request.grid(), slots, new PlanWork(planners), watch.notes());
            answers.run(grid, open, stop, FoundPlans.WORDS, watch::part);
            watch.at(Stage.WRITING);
            List<Outcome> outcomes = wanted.stream()
                    .flatMap(each -> outcome(each, answers).stream())
                    .toList();
            PortfolioResult result = new PortfolioResult(
                    outcomes,
                    wanted.size(),
                    landed,
                    grid.slots(),
                    input.moves(),
                    PriceRemarks.of(variants),
                    control.cancellation().isCancelled());
            new PortfolioFolder(request.folder()).write(result, variants, answers::bytes);
            return result;
        }
    }

    private List<PlannedVariant> variants(PortfolioInput input) {
        List<PlannedVariant> variants = new ArrayList<>();
        input.projects().forEach((name, file) -> {
            List<PlannedVariant> each = PlannedVariant.of(
                    name,
                    file,
                    input.variants(),
                    project -> SharedPrices.on(project, request.catalogue(), watch.notes()));
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

    private static List<GridJob> jobs(List<Wanted> wanted) {
        return wanted.stream()
                .filter(each -> each.task().isPresent())
                .map(each -> new GridJob(
                        each.key().orElseThrow(), name(each), each.task().get().bytes()))
                .toList();
    }

    private static String name(Wanted wanted) {
        return wanted.variant().project() + " " + wanted.variant().variant().name() + " seed " + wanted.seed();
    }

    /** Empty where it was not come to. */
    private static Optional<Outcome> outcome(Wanted wanted, KeptAnswers<Outcome.Found> answers) {
        Optional<Outcome.Found> figures = wanted.key().flatMap(answers::found);
        Optional<String> failure =
                wanted.variant().failure().or(() -> wanted.key().flatMap(answers::failure));
        if (figures.isEmpty() && failure.isEmpty()) {
            return Optional.empty();
        }
        PlannedVariant variant = wanted.variant();
        OptionalDouble price = variant.price();
        return Optional.of(new Outcome(
                variant.project(), variant.variant().name(), wanted.seed(), wanted.key(), price, figures, failure));
    }
}
