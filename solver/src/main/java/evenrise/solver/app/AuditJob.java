package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.intake.TypicalInrush;
import evenrise.solver.report.GuessedText;
import evenrise.solver.report.NextLoadText;
import evenrise.solver.report.TypicalInrushText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;

/** A plan judged, and what else is asked of one that is there. */
final class AuditJob {
    /** A plan read with its project and laid out. */
    record Subject(Reading<Project> read, Layout layout) {
        static Subject of(Source project, Source plan, Consumer<String> note) {
            Reading<Project> read = Inputs.project(project, note);
            Project subject = read.value().orElseThrow();
            return new Subject(
                    read,
                    Layout.of(subject, Inputs.plan(plan, subject, note).value().orElseThrow()));
        }

        /** The same with another state of the project, such as other prices. */
        Subject with(UnaryOperator<Project> change) {
            return new Subject(read, Layout.of(change.apply(project()), layout.plan()));
        }

        Project project() {
            return layout.project();
        }

        /** Judged, with the bounds that short arguments show. */
        Evaluation evaluation(Optional<Plan> earlier) {
            return Evaluation.of(layout, () -> ProvenBounds.of(project()), earlier);
        }
    }

    private final Watch watch;
    private final Cancellation cancellation;

    AuditJob(Watch watch, Cancellation cancellation) {
        this.watch = watch;
        this.cancellation = cancellation;
    }

    AuditResult run(AuditRequest request) {
        request.proofFile().ifPresent(path -> Outputs.refuseInputs(path, List.of(request.project(), request.plan())));
        Subject subject = Subject.of(request.project(), request.plan(), watch.notes());
        Optional<Plan> earlier =
                request.from().map(source -> Inputs.earlierPlan(source, subject.project(), watch.notes()));
        Evaluation evaluation = request.proof().isEmpty()
                ? subject.evaluation(earlier)
                : Evaluation.of(subject.layout(), () -> proven(subject, request), earlier);
        watch.at(Stage.JUDGING);
        evaluation.assessment();
        watch.at(Stage.BOUNDS);
        evaluation.bounds();
        List<String> findings = Inputs.findings(subject.read());
        findings.forEach(finding -> watch.notes().accept(request.project().name() + ": " + finding));
        watch.at(Stage.WRITING);
        return new AuditResult(
                evaluation, subject.read().sha256(), findings, subject.read().taken());
    }

    private Bounds proven(Subject subject, AuditRequest request) {
        KeptProof kept = new KeptProof(request.proofFile(), subject.read().sha256(), watch.notes());
        LongerProof proof = new LongerProof(subject.layout(), request.proof().orElseThrow(), kept, watch.notes());
        cancellation.whenCancelled(proof::stop);
        return proof.bounds();
    }

    Listing nextLoad(NextLoadRequest request) {
        Layout layout =
                Subject.of(request.project(), request.plan(), watch.notes()).layout();
        return style -> NextLoadText.lines(layout, request.amps(), request.poles(), style.isFull(), style.paint());
    }

    Listing guessed(AuditRequest request) {
        Project project =
                Subject.of(request.project(), request.plan(), watch.notes()).project();
        return style -> GuessedText.lines(project, style.isFull(), style.paint());
    }

    Listing typicalInrush(TypicalInrushRequest request) {
        request.into().ifPresent(path -> Outputs.refuseInputs(path, List.of(request.project(), request.plan())));
        Subject subject = Subject.of(request.project(), request.plan(), watch.notes());
        Project project = subject.project();
        if (request.into().isPresent()) {
            Path path = request.into().get();
            Outputs.write(() -> ProjectFile.write(
                    TypicalInrush.into(project), subject.read().notes(), path, Format.ofName(path.toString())));
        }
        List<TypicalInrush> usual = TypicalInrush.of(project);
        return style -> TypicalInrushText.lines(project.name(), usual, style.isFull(), style.paint());
    }
}
