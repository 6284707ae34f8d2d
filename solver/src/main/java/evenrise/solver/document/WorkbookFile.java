package evenrise.solver.document;

import evenrise.solver.report.page.Document;
import evenrise.solver.report.page.Fact;
import evenrise.solver.report.page.Grid;
import evenrise.solver.report.page.Imprint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.dhatim.fastexcel.Position;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Every table of a plan as a workbook: numbers are numbers, texts are texts and never formulas. */
public final class WorkbookFile {
    private static final int LONGEST_SHEET_NAME = 31;

    private WorkbookFile() {}

    public static byte[] of(Document document) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "evenrise", null)) {
            Worksheet cover = workbook.newWorksheet("cover");
            cover(cover, document);
            imprint(cover, document.imprint());
            for (Grid grid : document.grids()) {
                String name = grid.id()
                        .substring(0, Math.min(LONGEST_SHEET_NAME, grid.id().length()));
                Worksheet sheet = workbook.newWorksheet(name);
                sheet(sheet, grid);
                imprint(sheet, document.imprint());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** An ampersand begins a code in headers and footers, so names go without. */
    private static void imprint(Worksheet sheet, Imprint imprint) {
        String project = Cells.text(imprint.project()).replace("&", "+");
        String revision = Cells.text(imprint.revision()).replace("&", "+");
        sheet.header(project.substring(0, Math.min(60, project.length())), Position.LEFT);
        sheet.header("revision " + revision + ", " + Cells.text(imprint.date()).replace("&", "+"), Position.RIGHT);
        sheet.footer("project file " + imprint.shortHash() + ", evenrise " + imprint.version(), Position.LEFT);
        sheet.footer("page &P of &N", Position.RIGHT);
    }

    private static void cover(Worksheet sheet, Document document) {
        int row = 0;
        sheet.value(row, 0, Cells.text(document.imprint().project()));
        sheet.style(row++, 0).bold().fontSize(16).set();
        for (List<String> line : List.of(
                List.of("Revision", document.imprint().revision()),
                List.of("Date", document.imprint().date()),
                List.of("Project file", document.imprint().projectSha256()),
                List.of("Software", "evenrise " + document.imprint().version()))) {
            sheet.value(row, 0, line.get(0));
            sheet.value(row++, 1, Cells.text(line.get(1)));
        }
        row++;
        for (Fact fact : document.facts()) {
            sheet.value(row, 0, fact.name());
            sheet.value(row, 1, fact.value());
            sheet.value(row++, 2, fact.note());
        }
        row++;
        for (String finding : document.findings()) {
            sheet.value(row++, 0, Cells.text(finding));
        }
        for (String caution : document.cautions()) {
            sheet.value(row++, 0, caution);
        }
        sheet.width(0, 18);
        sheet.width(1, 26);
        sheet.width(2, 40);
    }

    private static void sheet(Worksheet sheet, Grid grid) {
        for (int column = 0; column < grid.columns().size(); column++) {
            sheet.value(0, column, grid.columns().get(column).header());
            sheet.style(0, column).bold().set();
            sheet.width(column, grid.columns().get(column).isNumber() ? 14 : 24);
        }
        for (int row = 0; row < grid.rows().size(); row++) {
            List<Object> cells = grid.rows().get(row);
            for (int column = 0; column < cells.size(); column++) {
                if (cells.get(column) instanceof Number number) {
                    sheet.value(row + 1, column, number);
                } else {
                    sheet.value(row + 1, column, Cells.text(String.valueOf(cells.get(column))));
                }
            }
        }
        for (int column = 0; column < grid.columns().size(); column++) {
            if (grid.columns().get(column).isNumber() && !grid.rows().isEmpty()) {
                sheet.range(1, column, grid.rows().size(), column)
                        .style()
                        .format(Cells.isWhole(grid, column) ? "0" : "0.00")
                        .set();
            }
        }
        sheet.freezePane(0, 1);
    }
}
