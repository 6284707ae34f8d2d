package evenrise.solver.app;

import evenrise.model.estimate.PriceBasis;
import evenrise.model.file.Reading;
import evenrise.model.file.SideNotes;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.compare.BidSpare;
import evenrise.solver.compare.Comparison;
import evenrise.solver.compare.CountRange;
import evenrise.solver.compare.Judged;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.PriceRange;
import evenrise.solver.compare.QuantityPrices;
import evenrise.solver.compare.Scenario;
import evenrise.solver.compare.ScenarioPlanner;
import evenrise.solver.compare.ScenarioPool;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.compare.Sweep;
import evenrise.solver.compare.Variation;
import evenrise.solver.rendering.EstimatePage;
import evenrise.solver.report.CompareChart;
import evenrise.solver.report.CompareText;
import evenrise.solver.report.EstimateSheet;
import evenrise.solver.report.LeastPriceText;
import evenrise.solver.report.PriceRangeText;
import evenrise.solver.table.Csv;
import evenrise.solver.tidy.Tidying;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** A comparison from request to written folder. */
final class CompareJob {
    private final CompareRequest request;
    private final JobControl control;
    private final Watch watch;
    private TimeLimit limit;

    CompareJob(CompareRequest request, JobControl control, Watch watch) {
        this.request = request;
        this.control = control;
        this.watch = watch;
    }

    CompareResult run() {
        try (TimeLimit limited = new TimeLimit(request.limit(), control.cancellation())) {
            limit = limited;
            return compared();
        }
    }

    private CompareResult compared() {
        Reading<Project> read = Inputs.project(request.project(), watch.notes());
        Project stated = SharedPrices.on(read.value().orElseThrow(), request.catalogue(), watch.notes());
        Catalogue catalogue = checked(stated);
        BidSpare spare = request.spare()
                .map(it -> new BidSpare(it.slots(), it.outputs(), it.runningPercent(), true))
                .orElse(BidSpare.USUAL);
        Project subject = spare.on(stated);
        List<String> basis = PriceBasis.of(stated).sentences();
        Path folder = folder();
        Variation variation = new Variation(subject, limit::isOver);
        Comparison comparison = new Comparison(
                variation,
                Stream.concat(Stream.of(spare.sentence(stated)), basis.stream()).toList(),
                counts(request.panels()),
                counts(request.boards()));
        if (!comparison.hasBoardKinds() && subject.loads().stream().anyMatch(Load::switched)) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT, request.project().name() + ": no board type has outputs to use.");
        }
        QuietLibraries.hush();
        watch.at(Stage.SEARCHING);
        try {
            Optional<PriceRange> range = drawn(subject);
            if (range.isPresent()) {
                WholeFile.write(folder.resolve("draws.csv"), Csv.of(PriceRangeText.draws(range.get()), basis));
            }
            Sweep tries = sweep(variation, folder, read.notes(), true);
            AtomicInteger done = new AtomicInteger();
            LeastPrice least = comparison.leastPrice(
                    tries,
                    request.tries(),
                    state -> {
                        listed(folder, state);
                        watch.estimate(EstimateState.of(subject.name(), catalogue.currency(), state, range, List.of()));
                    },
                    finding -> told(done.incrementAndGet(), request.tries(), finding));
            List<Scenarios.Cell> cells = request.leastOnly() || limit.isOver() ? List.of() : comparison.cells();
            List<Scenario> scenarios = scenarios(comparison, least, cells);
            Sweep sweep = sweep(variation, folder, read.notes(), false);
            done.set(0);
            List<ScenarioResult> findings =
                    sweep.run(scenarios, finding -> told(done.incrementAndGet(), scenarios.size(), finding));
            watch.at(Stage.WRITING);
            WholeFile.write(folder.resolve("make-ups.csv"), Csv.of(LeastPriceText.values(least), least.basis()));
            WholeFile.write(folder.resolve("scenarios.csv"), Csv.of(CompareText.values(findings), least.basis()));
            WholeFile.write(
                    folder.resolve("front.svg"),
                    CompareChart.svg(subject.name(), catalogue.currency(), basis, findings));
            EstimateSheet sheet = EstimateSheet.of(subject.name(), catalogue.currency(), least, range, findings);
            WholeFile.write(folder.resolve("estimate.html"), EstimatePage.html(sheet));
            WholeFile.write(folder.resolve("estimate.pdf"), EstimatePage.pdf(sheet));
            return new CompareResult(
                    subject.name(),
                    catalogue.currency(),
                    least,
                    range,
                    cells,
                    findings,
                    control.cancellation().isCancelled());
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
    }

    private Optional<PriceRange> drawn(Project subject) {
        return request.draws() == 0
                ? Optional.empty()
                : Optional.of(new QuantityPrices(subject, limit::isOver)
                        .drawn(request.draws(), request.effort().seed()));
    }

    private Sweep sweep(Variation variation, Path folder, SideNotes notes, boolean endsSound) {
        Effort effort = request.effort();
        Sweep sweep = new Sweep(
                variation, folder, notes, effort.moves().getAsLong(), effort.seed(), endsSound, planner(endsSound));
        limit.whenOver(sweep::stop);
        return sweep;
    }

    private ScenarioPlanner planner(boolean endsSound) {
        return request.grid()
                .<ScenarioPlanner>map(access -> new ScenarioGrid(access, watch.notes()))
                .orElseGet(() -> new ScenarioPool(
                        request.effort().sideBySide(), found -> ScenarioWork.finished(found, endsSound)));
    }

    /** The list is there before the first plan is, and says after each what is known. */
    private static void listed(Path folder, LeastPrice state) {
        Outputs.write(() ->
                WholeFile.write(folder.resolve("make-ups.csv"), Csv.of(LeastPriceText.values(state), state.basis())));
    }

    /** Numbers in the ranges, and the cheapest make-up that stands, where it is not one of them. */
    private static List<Scenario> scenarios(Comparison comparison, LeastPrice least, List<Scenarios.Cell> cells) {
        List<Scenario> scenarios = new ArrayList<>(
                cells.stream().flatMap(cell -> cell.scenarios().stream()).toList());
        least.cheapest().map(Judged::makeUp).ifPresent(makeUp -> {
            if (scenarios.stream().noneMatch(each -> each.makeUp().equals(makeUp))) {
                scenarios.addAll(0, comparison.aims(makeUp));
            }
        });
        return scenarios;
    }

    private void told(int done, int all, ScenarioResult finding) {
        watch.part(new JobPart(done, all, finding.scenario().key(), words(finding)));
    }

    static Plan finished(Sweep.Found found) {
        return Finishing.evaluated(
                        found.projectSha256(),
                        found.request(),
                        found.outcome(),
                        Tidying.of(found.request().project(), found.outcome().plan(), Optional.empty(), false),
                        Optional.empty())
                .plan();
    }

    /** Of a plan that only shows that there is one, nothing is proven. */
    static Plan tried(Sweep.Found found) {
        Bounds nothing = Bounds.builder()
                .objective(0)
                .peakInrushAmps(0)
                .supplyDeviationAmps(0)
                .panelDeviationsAmps(0)
                .durationSeconds(0)
                .build();
        return Finishing.evaluated(
                        found.projectSha256(),
                        found.request(),
                        found.outcome(),
                        found.outcome().plan(),
                        Optional.of(nothing))
                .plan();
    }

    private static Optional<CountRange> counts(Optional<CompareRequest.Range> range) {
        return range.map(each -> new CountRange(each.least(), each.most()));
    }

    private static String words(ScenarioResult finding) {
        return finding.isSound()
                ? String.format(
                        Locale.ROOT,
                        "price %.2f  peak %.1f A  time %.2f s",
                        finding.scenario().price(),
                        finding.metrics().peakInrushAmps(),
                        finding.metrics().durationSeconds())
                : finding.why().orElseThrow();
    }

    /** What a comparison needs and a plan does not, all said in one pass. */
    private Catalogue checked(Project subject) {
        String project = request.project().name();
        List<String> missing = new ArrayList<>();
        if (subject.catalogue().isEmpty()
                || subject.catalogue().get().panelTypes().isEmpty()) {
            missing.add(project
                    + ": no catalogue with panel_types. Name one with --catalogue ('evenrise catalogue --template FILE')"
                    + ", or state it: 'evenrise schema project' shows the fields.");
        }
        if (subject.boardTypes().isEmpty()) {
            missing.add(project + ": no board_types to choose from.");
        }
        if (request.draws() > 0 && subject.quantities().isEmpty()) {
            missing.add(project + ": no quantities that are open, so there is nothing to draw.");
        }
        if (!missing.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.INPUT, missing);
        }
        return subject.catalogue().orElseThrow();
    }

    private Path folder() {
        try {
            return Files.createDirectories(request.folder());
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT,
                    "folder '" + request.folder() + "' could not be made: " + e.getMessage() + ".");
        }
    }
}
