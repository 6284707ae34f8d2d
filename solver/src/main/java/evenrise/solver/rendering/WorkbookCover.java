package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.Fact;
import java.util.List;
import org.dhatim.fastexcel.HyperLink;
import org.dhatim.fastexcel.Worksheet;

/** The first sheet of a workbook: what it is of, the figures that matter, what is wrong, and what the sheets hold. */
final class WorkbookCover {
    private static final int NAME_COLUMN = 18;
    private static final int VALUE_COLUMN = 44;
    private static final int NOTE_COLUMN = 70;

    private WorkbookCover() {}

    /** @param panelSheets names of the sheets that hold the schedules */
    static void write(Worksheet sheet, Document document, List<String> panelSheets) {
        int row = 0;
        sheet.value(row, 0, Cells.text(document.imprint().project()));
        sheet.style(row++, 0).bold().fontSize(16).set();
        sheet.value(row, 0, Cells.text(document.headline()));
        sheet.style(row++, 0).bold().set();
        for (List<String> line : List.of(
                List.of("Revision", Cells.text(document.imprint().revision())),
                List.of("Date", Cells.text(document.imprint().date())),
                List.of("Project file", document.imprint().projectSha256()),
                List.of("Software", "evenrise " + document.imprint().version()))) {
            sheet.value(row, 0, line.get(0));
            // A hash as it is, so that it can be searched for.
            sheet.value(row++, 1, line.get(1));
        }
        row++;
        for (Fact fact : document.facts()) {
            sheet.value(row, 0, fact.name());
            sheet.value(row, 1, fact.value());
            sheet.value(row, 2, fact.note());
            wrapped(sheet, row++);
        }
        row++;
        row = list(sheet, row, "Broken rules: do not build from this plan", document.findings());
        row = list(sheet, row, "Cautions", document.cautions());
        heading(sheet, row++, "Sheets");
        for (DocumentTable<?> table : document.tables().toFillIn()) {
            link(sheet, row, table.id());
            sheet.value(row, 1, table.title());
            sheet.value(row, 2, table.note());
            wrapped(sheet, row++);
        }
        link(sheet, row, "panels");
        sheet.value(row, 1, "Panels: connected, demand and what is left");
        sheet.value(
                row,
                2,
                "Each taken from the panel's own sheet behind it: change a current there, and its sums follow.");
        wrapped(sheet, row++);
        for (int i = 0; i < panelSheets.size(); i++) {
            link(sheet, row, panelSheets.get(i));
            sheet.value(row++, 1, "Panel schedule");
        }
        sheet.width(0, NAME_COLUMN);
        sheet.width(1, VALUE_COLUMN);
        sheet.width(2, NOTE_COLUMN);
    }

    /** Nothing at all where there is no line. */
    private static int list(Worksheet sheet, int from, String title, List<String> lines) {
        if (lines.isEmpty()) {
            return from;
        }
        int row = from;
        heading(sheet, row, title);
        for (String line : lines) {
            // In the widest column, where it wraps: in the first, paper would cut what goes on beyond the last column.
            sheet.value(row, 2, Cells.text(line));
            SheetStyle.height(sheet, row, SheetStyle.lines(line, NOTE_COLUMN));
            sheet.style(row++, 2).wrapText(true).verticalAlignment("top").set();
        }
        return row + 1;
    }

    private static void wrapped(Worksheet sheet, int row) {
        SheetStyle.height(
                sheet,
                row,
                Math.max(
                        SheetStyle.lines(String.valueOf(sheet.value(row, 1)), VALUE_COLUMN),
                        SheetStyle.lines(String.valueOf(sheet.value(row, 2)), NOTE_COLUMN)));
        sheet.range(row, 0, row, 2)
                .style()
                .wrapText(true)
                .verticalAlignment("top")
                .set();
    }

    /** Leads to a sheet of this workbook. */
    private static void link(Worksheet sheet, int row, String name) {
        sheet.hyperlink(row, 0, HyperLink.internal("'" + name + "'!A1", name));
    }

    private static void heading(Worksheet sheet, int row, String title) {
        sheet.value(row, 0, title);
        sheet.style(row, 0).bold().set();
    }
}
