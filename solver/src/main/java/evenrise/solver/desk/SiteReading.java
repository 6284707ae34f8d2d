package evenrise.solver.desk;

import evenrise.model.file.ProjectFile;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.solver.app.CancelSwitch;
import evenrise.solver.app.CommissionRequest;
import evenrise.solver.app.CommissionResult;
import evenrise.solver.app.DocumentSet;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobProgress;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.RecordedColumnsResult;
import evenrise.solver.app.Source;
import evenrise.solver.desk.MeasuredAnswers.RecordedColumnView;
import evenrise.solver.desk.MeasuredAnswers.RecordedColumnsView;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What files from the site say of a project and its plan, by the job that {@code commission} does. */
final class SiteReading {
    private final DeskFiles files;
    private final Jobs jobs;

    /**
     * What was said of one state.
     *
     * @param result empty where there are problems
     * @param notes what was left out of account on the way
     */
    record Told(
            DeskState of,
            Optional<RecordedColumnsView> columns,
            Optional<CommissionResult> result,
            List<String> notes,
            List<String> problems) {
        /** @throws JobFailed with the problems */
        CommissionResult sound() {
            return result.orElseThrow(() -> new JobFailed(JobFailed.Reason.INPUT, problems));
        }
    }

    SiteReading(DeskFiles files, Jobs jobs) {
        this.files = files;
        this.jobs = jobs;
    }

    /** @param inFullUse loads that somebody saw in full use */
    Told told(DeskState now, SiteFiles.Laid laid, MeasuredRequests.Circumstances circumstances, Set<String> inFullUse) {
        Optional<RecordedColumnsView> columns = Optional.empty();
        try {
            columns = laid.recording().map(each -> view(jobs.recordedColumns(each, files.project())));
            if (columns.filter(SiteReading::isToBeAsked).isPresent()) {
                return new Told(
                        now,
                        columns,
                        Optional.empty(),
                        List.of(),
                        List.of("The headers of the recording do not tell which column is what. Say it above, once: it"
                                + " is kept beside the project."));
            }
            List<String> notes = new ArrayList<>();
            CommissionResult result = jobs.commission(
                    request(now, laid, circumstances, inFullUse, Optional.empty()),
                    new JobControl(noting(notes), new CancelSwitch()));
            return new Told(
                    now,
                    columns,
                    Optional.of(result),
                    notes.stream().map(laid::bare).toList(),
                    List.of());
        } catch (JobFailed e) {
            return new Told(
                    now,
                    columns,
                    Optional.empty(),
                    List.of(),
                    e.messages().stream().map(laid::bare).toList());
        }
    }

    /** Writes the record of the plant as built; @return the names of its files */
    List<String> record(
            DeskState of,
            SiteFiles.Laid laid,
            MeasuredRequests.Circumstances circumstances,
            Set<String> inFullUse,
            DocumentSet wanted) {
        return jobs.commission(request(of, laid, circumstances, inFullUse, Optional.of(wanted)), JobControl.NONE)
                .written();
    }

    private static boolean isToBeAsked(RecordedColumnsView columns) {
        return !columns.isTold() && !columns.columns().isEmpty();
    }

    private static JobListener noting(List<String> notes) {
        return new JobListener() {
            @Override
            public void progress(JobProgress now) {
                // It is soon done.
            }

            @Override
            public void note(String text) {
                notes.add(text);
            }
        };
    }

    private static RecordedColumnsView view(RecordedColumnsResult columns) {
        return new RecordedColumnsView(
                columns.isTold(),
                columns.columns().stream()
                        .map(each -> new RecordedColumnView(each.header(), each.example(), each.means()))
                        .toList());
    }

    private CommissionRequest request(
            DeskState state,
            SiteFiles.Laid laid,
            MeasuredRequests.Circumstances circumstances,
            Set<String> inFullUse,
            Optional<DocumentSet> record) {
        return new CommissionRequest(
                project(state.project()),
                Source.of(state.plan()),
                laid.sheets(),
                said(circumstances.day()),
                known(state.project(), inFullUse),
                false,
                Optional.empty(),
                laid.recording()
                        .map(each -> new CommissionRequest.Recorded(
                                each,
                                said(circumstances.at()).filter(id -> !id.equals(NodeFigures.SUPPLY)),
                                said(circumstances.system()),
                                jobs.keptColumns(files.project()))),
                record,
                said(circumstances.use()));
    }

    /** The file where it says the same, since what was saved at the panel names its bytes. */
    private Source project(Project project) {
        boolean isInTheFile = ProjectFile.read(files.project())
                .value()
                .filter(project::equals)
                .isPresent();
        return isInTheFile ? Source.file(files.project()) : Source.of(project);
    }

    private static Set<String> known(Project project, Set<String> inFullUse) {
        Set<String> known = new HashSet<>(inFullUse);
        known.retainAll(project.loads().stream().map(Load::id).toList());
        return known;
    }

    private static Optional<String> said(String word) {
        return Optional.of(word).filter(each -> !each.isEmpty());
    }
}
