package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.MappingFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.SideNotes;
import evenrise.model.file.WholeFile;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Project;
import evenrise.solver.intake.EquipmentList;
import evenrise.solver.intake.Template;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** An equipment list made a project. */
final class ImportJob {
    private ImportJob() {}

    static ImportResult run(ImportRequest request, Watch watch) {
        List<Source> inputs = new ArrayList<>(List.of(Source.file(request.list())));
        request.mapping().map(Source::file).ifPresent(inputs::add);
        request.target().ifPresent(target -> Outputs.refuseInputs(target, inputs));
        request.wholeMapping().ifPresent(target -> refuse(target, request, inputs));
        EquipmentList read = read(request, watch);
        request.wholeMapping()
                .ifPresent(target -> Outputs.write(
                        () -> MappingFile.write(read.mapping(), target, Format.ofName(target.toString()))));
        if (request.target().isEmpty()) {
            return new ImportResult(read, Optional.empty());
        }
        boolean isWritten = read.project().isPresent() && (read.problems().isEmpty() || request.withoutBadRows());
        if (!isWritten) {
            return new ImportResult(
                    read,
                    Optional.of(
                            request.list() + ": nothing is written. Cure what is listed, in the list or by a mapping"
                                    + " (--write-mapping FILE, then --map FILE)"
                                    + (read.project().isPresent() ? ", or say --without-bad-rows." : ".")));
        }
        watch.at(Stage.WRITING);
        write(read, request.target().get(), watch);
        return new ImportResult(read, Optional.empty());
    }

    private static void refuse(Path wholeMapping, ImportRequest request, List<Source> inputs) {
        Outputs.refuseInputs(wholeMapping, inputs);
        if (request.target().filter(wholeMapping::equals).isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "project and mapping would be one file. Say another FILE for one of them.");
        }
    }

    private static void write(EquipmentList read, Path target, Watch watch) {
        Project project = read.project().orElseThrow();
        SideNotes notes = KeptNotes.ofReplaced(target, project, watch.notes()).withLoadNotes(read.notes());
        Outputs.write(() -> ProjectFile.write(project, notes, target, Format.ofName(target.toString())));
    }

    /** A blank list, a workbook or a table of values by the file's ending. */
    static void template(Path file) {
        boolean isCsv = file.toString().toLowerCase(Locale.ROOT).endsWith(".csv");
        Outputs.write(() -> WholeFile.write(file, isCsv ? Template.csv() : Template.workbook()));
    }

    private static EquipmentList read(ImportRequest request, Watch watch) {
        Mapping mapping = request.mapping()
                .map(file -> Inputs.told(file.toString(), MappingFile.read(file), watch.notes())
                        .value()
                        .orElseThrow())
                .orElse(Mapping.USUAL);
        if (request.placesLifeSafety()) {
            mapping = mapping.withPlacesLifeSafety(true);
        }
        if (!request.ignored().isEmpty()) {
            mapping = mapping.withIgnored(request.ignored());
        }
        Path list = request.list();
        String title =
                request.name().orElseGet(() -> list.getFileName().toString().replaceFirst("\\.[^.]*$", ""));
        try {
            return EquipmentList.read(list, mapping, title.isBlank() ? "Equipment list" : title);
        } catch (NoSuchFileException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "file '" + list + "' does not exist.");
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "file '" + list + "' cannot be read: " + e.getMessage() + ".");
        }
    }
}
