package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.scatter.NodeScatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The documents of one plan, drawn from one evaluation. */
final class ReportJob {
    private final Watch watch;
    private final Cancellation cancellation;

    ReportJob(Watch watch, Cancellation cancellation) {
        this.watch = watch;
        this.cancellation = cancellation;
    }

    ReportResult run(ReportRequest request) {
        DocumentFiles files = files(request);
        files.refuseWhatIsNotOurs();
        try (DrawnDocuments drawn = drawn(request, files)) {
            return new ReportResult(
                    drawn.evaluation(),
                    drawn.write(
                            request.documents().folder(), request.documents().overwrites()));
        }
    }

    /** Everything but the writing. */
    DrawnDocuments draw(ReportRequest request) {
        return drawn(request, files(request));
    }

    private DocumentFiles files(ReportRequest request) {
        List<Source> inputs = new ArrayList<>(List.of(request.project(), request.plan()));
        request.against().ifPresent(inputs::add);
        request.againstProject().ifPresent(inputs::add);
        request.catalogue().map(Source::file).ifPresent(inputs::add);
        if (request.againstProject().isPresent() && request.against().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "an earlier project alone tells nothing: say --against PLAN as well.");
        }
        return new DocumentFiles(request.documents(), inputs, watch.notes());
    }

    private DrawnDocuments drawn(ReportRequest request, DocumentFiles files) {
        AuditJob.Subject subject = subject(request, request.project(), request.plan());
        Optional<Plan> earlier =
                request.against().map(source -> Inputs.earlierPlan(source, subject.project(), watch.notes()));
        Evaluation evaluation = subject.evaluation(earlier);
        Optional<Evaluation> before = earlier.map(plan -> before(request, subject, plan));
        watch.at(Stage.JUDGING);
        evaluation.assessment();
        List<NodeScatter> scatter = request.trials() < 1 ? List.of() : scatter(subject.layout(), request);
        watch.at(Stage.WRITING);
        return new DrawnDocuments(
                evaluation,
                files.folder(),
                files.drawn(evaluation, subject.read().sha256(), before, scatter, this::at));
    }

    private void at(String words) {
        if (cancellation.isCancelled()) {
            throw new JobFailed(
                    JobFailed.Reason.CANCELLED, "stopped before everything was drawn; nothing is kept of it.");
        }
        watch.at(words);
    }

    /** With the same prices, earlier or not, so that differences are of the plan. */
    private AuditJob.Subject subject(ReportRequest request, Source project, Source plan) {
        return AuditJob.Subject.of(project, plan, watch.notes())
                .with(read -> SharedPrices.on(read, request.catalogue(), watch.notes()));
    }

    /** The earlier plan judged by its own project, or by this one where none is named. */
    private Evaluation before(ReportRequest request, AuditJob.Subject subject, Plan plan) {
        return request.againstProject()
                .map(project -> subject(request, project, request.against().orElseThrow())
                        .evaluation(Optional.empty()))
                .orElseGet(() -> Evaluation.of(Layout.of(subject.layout().index(), plan)));
    }

    private List<NodeScatter> scatter(Layout layout, ReportRequest request) {
        watch.at(Stage.TRIALS);
        return RehearseJob.scatter(layout, request.trials(), request.effort());
    }
}
