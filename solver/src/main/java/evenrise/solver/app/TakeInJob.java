package evenrise.solver.app;

import evenrise.model.check.Severity;
import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.ProjectTree;
import evenrise.model.file.Reading;
import evenrise.model.project.Project;
import evenrise.solver.exchange.EditedTables;
import evenrise.solver.exchange.ProjectTables;
import evenrise.solver.exchange.RowChange;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Edited tables of a project taken in: all of it, or nothing where anything contradicts. */
final class TakeInJob {
    private static final String CSV = ".csv";

    private final TakeInRequest request;
    private final Watch watch;

    TakeInJob(TakeInRequest request, Watch watch) {
        this.request = request;
        this.watch = watch;
    }

    TakeInResult run() {
        Outputs.refuseInputs(request.into(), List.of(Source.file(request.tables())));
        Reading<Project> read = Inputs.project(Source.file(request.project()), watch.notes());
        Map<String, ReadTable> tables = tables(read.sha256());
        EditedTables edited = EditedTables.of(ProjectTree.of(read.value().orElseThrow(), read.notes()), tables);
        refuse(edited.problems());
        Reading<Project> changed = edited.read(request.project().toString());
        refuse(changed.problems().stream()
                .filter(problem -> problem.severity() == Severity.ERROR)
                .map(edited::placed)
                .toList());
        changed.problems().forEach(problem -> watch.notes().accept(name() + ": " + edited.placed(problem)));
        Project project = changed.value().orElseThrow();
        boolean isElsewhere = !request.into().equals(request.project());
        boolean isWritten =
                !request.isTrial() && (isElsewhere || !edited.changes().isEmpty());
        if (isWritten) {
            watch.at(Stage.WRITING);
            Outputs.write(() -> ProjectFile.write(
                    project,
                    changed.notes(),
                    request.into(),
                    Format.ofName(request.into().toString())));
        }
        return new TakeInResult(
                project, edited.changes().stream().map(RowChange::text).toList(), isWritten);
    }

    private void refuse(List<String> problems) {
        if (!problems.isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    problems.stream()
                            .map(problem -> name() + ": " + Harmless.shown(problem))
                            .toList());
        }
    }

    /** By the names of the lists that they are of. */
    private Map<String, ReadTable> tables(String sha256) {
        Map<String, ReadTable> tables = new LinkedHashMap<>();
        try {
            for (ReadTable table : read()) {
                String list = table.name();
                if (FieldColumn.LISTS.contains(list)) {
                    tables.put(list, table);
                } else if (list.equals(ProjectTables.ABOUT)) {
                    ProjectTables.writtenFrom(table)
                            .filter(hash -> !hash.equals(sha256))
                            .ifPresent(other -> watch.notes()
                                    .accept(name()
                                            + ": the project has changed since these tables were written from it. What"
                                            + " changed there meanwhile is among what they would change back."));
                } else if (!list.equals(ProjectTables.FIELDS)) {
                    watch.notes().accept(name() + ": '" + Harmless.shown(list) + "' is the name of no list, and left.");
                }
            }
        } catch (NoSuchFileException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "file '" + name() + "' does not exist.");
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "'" + name() + "' cannot be read: " + e.getMessage() + ".");
        }
        if (tables.isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    name() + ": no table in it is called one of " + String.join(", ", FieldColumn.LISTS)
                            + ". Maybe begin with 'evenrise export PROJECT -o FILE.xlsx', or leave --into out for an"
                            + " equipment list.");
        }
        return tables;
    }

    private List<ReadTable> read() throws IOException {
        Path from = request.tables();
        if (!Files.isDirectory(from)) {
            List<ReadTable> read = TableFileReader.read(from);
            return read.size() == 1 && read.get(0).name().isEmpty() ? List.of(named(read.get(0), from)) : read;
        }
        try (Stream<Path> files = Files.list(from)) {
            List<ReadTable> all = new ArrayList<>();
            for (Path file :
                    files.filter(each -> each.toString().endsWith(CSV)).sorted().toList()) {
                all.add(named(TableFileReader.read(file).get(0), file));
            }
            return all;
        }
    }

    private static ReadTable named(ReadTable table, Path file) {
        String name = file.getFileName().toString();
        return new ReadTable(name.endsWith(CSV) ? name.substring(0, name.length() - CSV.length()) : name, table.rows());
    }

    private String name() {
        return Harmless.shown(request.tables().toString());
    }
}
