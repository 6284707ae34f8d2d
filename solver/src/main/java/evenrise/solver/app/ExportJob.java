package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.SideNotes;
import evenrise.model.project.Project;
import java.util.List;

/** A project written for others. */
final class ExportJob {
    private final ExportRequest request;
    private final Watch watch;

    ExportJob(ExportRequest request, Watch watch) {
        this.request = request;
        this.watch = watch;
    }

    ExportResult run() {
        Outputs.refuseInputs(request.into(), List.of(request.project()));
        Reading<Project> read = Inputs.project(request.project(), watch.notes());
        Project stated = read.value().orElseThrow();
        Project project = request.resolved() ? stated.withDefaults(List.of()) : stated;
        SideNotes notes = request.resolved() ? read.notes().inFull() : read.notes();
        watch.at(Stage.WRITING);
        Outputs.write(() -> ProjectFile.write(
                project, notes, request.into(), Format.ofName(request.into().toString())));
        return new ExportResult(List.of(Harmless.shown(request.into().toString()) + ": a project of "
                + Phrase.counted(project.loads().size(), "load")
                + (request.resolved() ? ", each stating all that it has, and without defaults" : "") + "."));
    }
}
