package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.Worksheet;

/**
 * A plan as a workbook: every table, what the panels add up to and a schedule for each. Numbers are numbers, what follows
 * from others is computed from them, and texts are texts and never formulas.
 */
public final class WorkbookFile {
    private WorkbookFile() {}

    public static byte[] of(Document document) {
        CalculatedWorkbook workbook = new CalculatedWorkbook(
                document.imprint().project() + ", revision "
                        + document.imprint().revision(),
                "Project file SHA-256 " + document.imprint().projectSha256());
        Worksheet cover = workbook.sheet("cover");
        List<Worksheet> sheets = new ArrayList<>(List.of(cover));
        for (DocumentTable<?> table : document.tables().toFillIn()) {
            Worksheet sheet = workbook.sheet(table.id());
            TableSheet.write(workbook, sheet, table);
            sheets.add(sheet);
        }
        List<String> panelNames = new ArrayList<>();
        Worksheet sums = workbook.sheet("panels");
        sheets.add(sums);
        for (int i = 0; i < document.schedules().size(); i++) {
            Worksheet sheet =
                    workbook.sheet("panel " + document.schedules().get(i).panel());
            panelNames.add(sheet.getName());
            ScheduleSheet.write(workbook, sheet, document.schedules().get(i), i + 1);
            sheets.add(sheet);
        }
        WorkbookCover.write(cover, document, panelNames);
        PanelSumsSheet.write(workbook, sums, document.schedules());
        sheets.forEach(sheet -> SheetStyle.print(sheet, document));
        return workbook.finished();
    }
}
