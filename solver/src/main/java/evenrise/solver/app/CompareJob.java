package evenrise.solver.app;

import evenrise.model.file.Reading;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.compare.CountRange;
import evenrise.solver.compare.Scenario;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.compare.Sweep;
import evenrise.solver.report.CompareChart;
import evenrise.solver.report.CompareText;
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
import java.util.function.Consumer;

/** A comparison from request to written folder. */
final class CompareJob {
    private final CompareRequest request;
    private final JobControl control;
    private final Watch watch;

    CompareJob(CompareRequest request, JobControl control, Watch watch) {
        this.request = request;
        this.control = control;
        this.watch = watch;
    }

    CompareResult run() {
        Reading<Project> read = Inputs.project(request.project(), watch.notes());
        Project subject = read.value().orElseThrow();
        Inputs.refuseUncompared(request.project(), subject);
        Catalogue catalogue = checked(subject);
        Path folder = folder();
        List<Scenarios.Cell> cells = new Scenarios(subject).cells(counts(request.panels()), counts(request.boards()));
        List<Scenario> scenarios =
                cells.stream().flatMap(cell -> cell.scenarios().stream()).toList();
        QuietLibraries.hush();
        Effort effort = request.effort();
        Sweep sweep = new Sweep(folder, read.notes(), effort.moves().getAsLong(), effort.seed(), CompareJob::finished);
        control.cancellation().whenCancelled(sweep::stop);
        watch.at(Stage.SEARCHING);
        try {
            List<ScenarioResult> findings = sweep.run(scenarios, effort.sideBySide(), parts(scenarios.size()));
            watch.at(Stage.WRITING);
            WholeFile.write(folder.resolve("scenarios.csv"), Csv.of(CompareText.values(findings)));
            WholeFile.write(
                    folder.resolve("front.svg"), CompareChart.svg(subject.name(), catalogue.currency(), findings));
            return new CompareResult(
                    subject.name(),
                    catalogue.currency(),
                    cells,
                    findings,
                    control.cancellation().isCancelled());
        } catch (WriteFailed e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, e.getMessage());
        }
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

    private static Optional<CountRange> counts(Optional<CompareRequest.Range> range) {
        return range.map(each -> new CountRange(each.least(), each.most()));
    }

    private Consumer<ScenarioResult> parts(int all) {
        AtomicInteger done = new AtomicInteger();
        return finding -> watch.part(
                new JobPart(done.incrementAndGet(), all, finding.scenario().key(), words(finding)));
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
            missing.add(project + ": no catalogue with panel_types. 'evenrise schema project' shows the fields.");
        }
        if (subject.boardTypes().isEmpty()) {
            missing.add(project + ": no board_types to choose from.");
        }
        for (Load load : subject.loads()) {
            boolean isTied = !load.panels().isEmpty()
                    || load.fixed().panel().isPresent()
                    || load.fixed().slot().isPresent()
                    || load.fixed().board().isPresent()
                    || load.fixed().output().isPresent();
            if (isTied) {
                missing.add(project + ": load '" + load.id()
                        + "' is tied to a panel or board that a comparison replaces. Maybe take away its"
                        + " panels and fixed.");
            }
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
