package evenrise.solver.cli;

import evenrise.model.file.WholeFile;
import evenrise.model.file.WriteFailed;
import evenrise.solver.document.HtmlPage;
import evenrise.solver.document.PrintedSheets;
import evenrise.solver.document.WorkbookFile;
import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Grid;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Writes documents into a folder, each whole or not at all. */
final class DocumentFiles {
    static final List<String> FORMATS = List.of("html", "pdf", "xlsx", "csv");

    private DocumentFiles() {}

    /** @return the names of what is written */
    static List<String> write(Document document, String output, List<String> formats) {
        List<String> written = new ArrayList<>();
        try {
            Path folder = Files.createDirectories(Inputs.path(output));
            if (formats.contains("html")) {
                put(folder, "plan.html", HtmlPage.of(document).getBytes(StandardCharsets.UTF_8), written);
            }
            if (formats.contains("pdf")) {
                put(folder, "plan-a4.pdf", PrintedSheets.of(document, PrintedSheets.Paper.A4), written);
                put(folder, "plan-letter.pdf", PrintedSheets.of(document, PrintedSheets.Paper.LETTER), written);
            }
            if (formats.contains("xlsx")) {
                put(folder, "plan.xlsx", WorkbookFile.of(document), written);
            }
            if (formats.contains("csv")) {
                for (Grid grid : document.grids()) {
                    put(folder, grid.id() + ".csv", Csv.of(values(grid)).getBytes(StandardCharsets.UTF_8), written);
                }
            }
        } catch (WriteFailed e) {
            throw new Failure(ExitCode.NOT_WRITTEN, e.getMessage());
        } catch (IOException e) {
            throw new Failure(
                    ExitCode.NOT_WRITTEN, "folder '" + output + "' could not be made: " + e.getMessage() + ".");
        }
        return written;
    }

    private static void put(Path folder, String name, byte[] bytes, List<String> written) throws WriteFailed {
        WholeFile.write(folder.resolve(name), bytes);
        written.add(name);
    }

    /** Header first; numbers in full. */
    private static List<List<String>> values(Grid grid) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(grid.columns().stream().map(Grid.Column::header).toList());
        grid.rows().forEach(row -> rows.add(row.stream().map(String::valueOf).toList()));
        return rows;
    }
}
