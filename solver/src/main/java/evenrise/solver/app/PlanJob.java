package evenrise.solver.cli;

import evenrise.model.file.Reading;
import evenrise.model.plan.Assessment;
import evenrise.model.plan.Bounds;
import evenrise.model.project.Project;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.report.Paint;
import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Documents;
import evenrise.solver.report.page.Imprint;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/** One search from request to written plan; an interrupt shortens the search and nothing else. */
final class PlanRun {
    private final Terminal terminal;
    private final PlannerSource planners;
    private final Interruption interruption;
    private final boolean isQuiet;
    private final boolean isStrict;

    private record Found(PlanningOutcome outcome, Optional<Bounds> bounds) {}

    PlanRun(Terminal terminal, PlannerSource planners, Interruption interruption, boolean isQuiet, boolean isStrict) {
        this.terminal = terminal;
        this.planners = planners;
        this.interruption = interruption;
        this.isQuiet = isQuiet;
        this.isStrict = isStrict;
    }

    /** @return the exit code */
    int run(Reading<Project> read, PlanningRequest request, PlanTarget target, Optional<DocumentFiles> report) {
        Optional<Checkpoint> checkpoint = target.checkpoint();
        Found found = search(read, request, checkpoint);
        Planned planned = Planned.of(read, request, found.outcome(), found.bounds(), interruption.happened());
        target.write(planned.plan(), terminal);
        checkpoint.ifPresent(Checkpoint::remove);
        report.ifPresent(files -> files.write(document(read, planned), DocumentFiles.FORMATS));
        if (isQuiet) {
            sayWhatIsBroken(planned);
        } else {
            PrintWriter writer = target.isStream() ? terminal.err() : terminal.out();
            Paint paint = target.isStream() ? terminal.errPaint() : terminal.outPaint();
            terminal.print(writer, planned.summary(paint));
            terminal.print(writer, target.written());
        }
        return planned.exitCode(isStrict);
    }

    private static Document document(Reading<Project> read, Planned planned) {
        Imprint imprint = new Imprint(
                planned.evaluation().project().name(),
                "A",
                LocalDate.now(ZoneId.systemDefault()).toString(),
                read.sha256(),
                Evenrise.Version.ofThisProgram());
        return Documents.of(imprint, planned.evaluation(), Optional.empty(), List.of());
    }

    private Found search(Reading<Project> read, PlanningRequest request, Optional<Checkpoint> checkpoint) {
        Queue<String> notes = new ConcurrentLinkedQueue<>();
        try (Watch watch = new Watch(ProgressView.of(terminal, isQuiet))) {
            PlannerSource.Search search = planners.search(request, watch::report, notes::add);
            interruption.stopsWith(search::stop);
            Optional<Checkpoint.Keeper> kept =
                    checkpoint.map(each -> each.keeping(search::best, Planned.unfinished(read, request), notes::add));
            try {
                PlanningOutcome outcome = search.plan();
                return new Found(outcome, search.bounds());
            } finally {
                kept.ifPresent(Checkpoint.Keeper::close);
            }
        } finally {
            notes.forEach(each -> ShowsFailures.message(terminal.err(), each));
        }
    }

    private void sayWhatIsBroken(Planned planned) {
        Assessment assessment = planned.evaluation().assessment();
        if (assessment.isBroken()) {
            ShowsFailures.message(
                    terminal.err(),
                    "nothing is to be built from this plan: " + assessment.headline() + " Audit it to see where.");
        }
    }
}
