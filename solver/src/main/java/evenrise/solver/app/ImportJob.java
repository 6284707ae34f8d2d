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
import evenrise.solver.table.HeaderWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** An equipment list made a project. */
final class ImportJob {
    private static final String ENDING = ".project.json";

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

    /** Each sheet a project of its own, in a folder; none is written where one cannot be. */
    static ImportAlternatesResult alternates(ImportRequest request, Watch watch) {
        Path folder = request.target().orElseThrow();
        Mapping mapping = mapping(request, watch);
        List<String> sheets = told(request, () -> EquipmentList.sheets(request.list(), mapping));
        if (sheets.size() < 2) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    request.list() + ": alternates are two or more sheets of one workbook that hold lists; it has "
                            + sheets.size() + ".");
        }
        String title = title(request);
        Map<String, ImportResult> results = new LinkedHashMap<>();
        Map<Path, EquipmentList> files = new LinkedHashMap<>();
        boolean isWritten = true;
        for (String sheet : sheets) {
            EquipmentList read =
                    told(request, () -> EquipmentList.read(request.list(), mapping.only(sheet), title + ", " + sheet));
            isWritten &= read.project().isPresent() && (read.problems().isEmpty() || request.withoutBadRows());
            results.put(sheet, new ImportResult(read, Optional.empty()));
            files.put(folder.resolve(fileName(sheet, files.keySet())), read);
        }
        if (isWritten) {
            watch.at(Stage.WRITING);
            made(folder);
            files.forEach((file, read) -> write(read, file, watch));
        }
        return new ImportAlternatesResult(
                results,
                isWritten
                        ? files.keySet().stream()
                                .map(file -> file.getFileName().toString())
                                .toList()
                        : List.of(),
                isWritten
                        ? Optional.empty()
                        : Optional.of(request.list() + ": nothing is written. Cure what is listed, or say"
                                + " --without-bad-rows."));
    }

    private static void made(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.OUTPUT, "folder '" + folder + "' could not be made: " + e.getMessage() + ".");
        }
    }

    private static String fileName(String sheet, Set<Path> taken) {
        String plain = HeaderWords.words(sheet).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        String base = plain.isEmpty() ? "alternate" : plain;
        String name = base;
        for (int number = 2; isTaken(name, taken); number++) {
            name = base + "-" + number;
        }
        return name + ENDING;
    }

    private static boolean isTaken(String name, Set<Path> taken) {
        return taken.stream().anyMatch(file -> file.getFileName().toString().equals(name + ENDING));
    }

    private static EquipmentList read(ImportRequest request, Watch watch) {
        Mapping mapping = mapping(request, watch);
        return told(request, () -> EquipmentList.read(request.list(), mapping, title(request)));
    }

    private static Mapping mapping(ImportRequest request, Watch watch) {
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
        return mapping;
    }

    private static String title(ImportRequest request) {
        String title = request.name()
                .orElseGet(() -> request.list().getFileName().toString().replaceFirst("\\.[^.]*$", ""));
        return title.isBlank() ? "Equipment list" : title;
    }

    private interface Reads<T> {
        T read() throws IOException;
    }

    private static <T> T told(ImportRequest request, Reads<T> reads) {
        try {
            return reads.read();
        } catch (NoSuchFileException e) {
            throw new JobFailed(JobFailed.Reason.INPUT, "file '" + request.list() + "' does not exist.");
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT, "file '" + request.list() + "' cannot be read: " + e.getMessage() + ".");
        }
    }
}
