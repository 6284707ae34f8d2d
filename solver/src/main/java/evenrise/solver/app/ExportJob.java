package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.FileSet;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.file.SideNotes;
import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.project.Project;
import evenrise.solver.exchange.ProjectTables;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A project written for others: again, as a workbook, or as tables of values. */
final class ExportJob {
    private final ExportRequest request;
    private final Watch watch;

    ExportJob(ExportRequest request, Watch watch) {
        this.request = request;
        this.watch = watch;
    }

    ExportResult run() {
        Path into = request.into();
        Outputs.refuseInputs(into, List.of(request.project()));
        Reading<Project> read = Inputs.project(request.project(), watch.notes());
        Project stated = read.value().orElseThrow();
        Project project = request.resolved() ? stated.withDefaults(List.of()) : stated;
        SideNotes notes = request.resolved() ? read.notes().inFull() : read.notes();
        String ending = into.toString().toLowerCase(Locale.ROOT);
        boolean isFolder =
                Files.isDirectory(into) || !into.getFileName().toString().contains(".");
        watch.at(Stage.WRITING);
        if (!isFolder && !ending.endsWith(".xlsx")) {
            Outputs.write(() -> ProjectFile.write(project, notes, into, Format.ofName(into.toString())));
            return result("a project of " + Phrase.counted(project.loads().size(), "load"));
        }
        ProjectTables tables = ProjectTables.of(ProjectTree.of(project, notes), project.name(), read.sha256());
        if (isFolder) {
            Outputs.write(() -> folder(into, tables.csv()));
        } else {
            Outputs.write(() -> WholeFile.write(into, tables.workbook()));
        }
        return result(String.join(", ", tables.counts()));
    }

    private static void folder(Path into, Map<String, byte[]> files) throws WriteFailed {
        FileSet set = new FileSet(into);
        List<String> foreign = set.foreign(files.keySet());
        if (!foreign.isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT,
                    "in " + Harmless.shown(into.toString()) + " somebody has changed or put "
                            + String.join(", ", foreign)
                            + ". Take in what is changed there first, or name another folder.");
        }
        files.forEach(set::add);
        set.write();
    }

    private ExportResult result(String what) {
        String resolved = request.resolved() ? ", each load stating all that it has, and without defaults" : "";
        return new ExportResult(List.of(Harmless.shown(request.into().toString()) + ": " + what + resolved + "."));
    }
}
