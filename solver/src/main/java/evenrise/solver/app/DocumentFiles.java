package evenrise.solver.cli;

import evenrise.model.file.FileSet;
import evenrise.model.file.WriteFailed;
import evenrise.solver.document.HtmlPage;
import evenrise.solver.document.PrintedSheets;
import evenrise.solver.document.WorkbookFile;
import evenrise.solver.report.Sanitizer;
import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Grid;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Where documents go: a folder that holds those of one run, all of them or all of the run before. */
final class DocumentFiles {
    static final List<String> FORMATS = List.of("html", "pdf", "xlsx", "csv");

    private static final String HTML = "plan.html";
    private static final String A4 = "plan-a4.pdf";
    private static final String LETTER = "plan-letter.pdf";
    private static final String WORKBOOK = "plan.xlsx";

    private final String output;
    private final boolean isForced;
    private final List<String> inputs;

    /**
     * @param isForced whether files in the folder that are not of an earlier run may be overwritten
     * @param inputs what the documents are made from, which they never overwrite; null where there is none
     */
    DocumentFiles(String output, boolean isForced, String... inputs) {
        this.output = output;
        this.isForced = isForced;
        this.inputs = Arrays.stream(inputs).filter(Objects::nonNull).toList();
    }

    /** @throws Failure where the documents could not be written, so that nobody waits for what gets lost */
    void refuseWhatIsNotOurs() {
        refuse(List.of(HTML, A4, LETTER, WORKBOOK, FileSet.MANIFEST));
    }

    /** @return the names of what is written */
    List<String> write(Document document, List<String> formats) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        if (formats.contains("html")) {
            files.put(HTML, HtmlPage.of(document).getBytes(StandardCharsets.UTF_8));
        }
        if (formats.contains("pdf")) {
            files.put(A4, PrintedSheets.of(document, PrintedSheets.Paper.A4));
            files.put(LETTER, PrintedSheets.of(document, PrintedSheets.Paper.LETTER));
        }
        if (formats.contains("xlsx")) {
            files.put(WORKBOOK, WorkbookFile.of(document));
        }
        if (formats.contains("csv")) {
            for (Grid grid : document.grids()) {
                files.put(grid.id() + ".csv", Csv.of(values(grid)).getBytes(StandardCharsets.UTF_8));
            }
        }
        refuse(files.keySet());
        FileSet set = new FileSet(Inputs.path(output));
        files.forEach(set::add);
        try {
            set.write();
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        }
        return List.copyOf(files.keySet());
    }

    private void refuse(Collection<String> names) {
        Path folder = Inputs.path(output);
        for (String name : names) {
            Inputs.refuseAsOutput(folder.resolve(name).toString(), inputs.toArray(String[]::new));
        }
        if (isForced) {
            return;
        }
        try {
            List<String> foreign = new FileSet(folder)
                    .foreign(names.stream()
                            .filter(each -> !each.equals(FileSet.MANIFEST))
                            .toList());
            if (!foreign.isEmpty()) {
                throw new Failure(
                        ExitCode.NOT_WRITTEN,
                        "folder '" + Sanitizer.clean(output)
                                + "' holds files that no earlier report wrote or that were "
                                + "changed since: " + Sanitizer.clean(String.join(", ", foreign))
                                + ". Name another folder, or --force to overwrite them.");
            }
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        }
    }

    /** Header first; numbers in full. */
    private static List<List<String>> values(Grid grid) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(grid.columns().stream().map(Grid.Column::header).toList());
        grid.rows().forEach(row -> rows.add(row.stream().map(String::valueOf).toList()));
        return rows;
    }
}
