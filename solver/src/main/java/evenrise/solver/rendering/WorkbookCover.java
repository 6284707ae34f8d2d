package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.Fact;
import java.util.List;
import org.dhatim.fastexcel.Worksheet;

/** The first sheet of a workbook: what it is of, the figures that matter, what is wrong, and what the sheets hold. */
final class WorkbookCover {
    private static final int NOTE_COLUMN = 70;

    private WorkbookCover() {}

    static void write(Worksheet sheet, Document document) {
        int row = 0;
        sheet.value(row, 0, Cells.text(document.imprint().project()));
        sheet.style(row++, 0).bold().fontSize(16).set();
        sheet.value(row, 0, Cells.text(document.headline()));
        sheet.style(row++, 0).bold().set();
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
        row = list(sheet, row, "Broken rules: do not build from this plan", document.findings());
        row = list(sheet, row, "Cautions", document.cautions());
        heading(sheet, row++, "Sheets");
        for (DocumentTable<?> table : document.tables().all()) {
            sheet.value(row, 0, table.id());
            sheet.value(row, 1, table.title());
            sheet.value(row, 2, table.note());
            sheet.range(row, 0, row++, 2)
                    .style()
                    .wrapText(true)
                    .verticalAlignment("top")
                    .set();
        }
        sheet.width(0, 18);
        sheet.width(1, 44);
        sheet.width(2, NOTE_COLUMN);
    }

    /** Nothing at all where there is no line. */
    private static int list(Worksheet sheet, int from, String title, List<String> lines) {
        if (lines.isEmpty()) {
            return from;
        }
        int row = from;
        heading(sheet, row++, title);
        for (String line : lines) {
            sheet.value(row++, 0, Cells.text(line));
        }
        return row + 1;
    }

    private static void heading(Worksheet sheet, int row, String title) {
        sheet.value(row, 0, title);
        sheet.style(row, 0).bold().set();
    }
}
