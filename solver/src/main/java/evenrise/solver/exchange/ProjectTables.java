package evenrise.solver.exchange;

import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.model.file.ProjectTree;
import evenrise.model.plan.Cautions;
import evenrise.solver.table.Csv;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.SteadyZip;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** The tables of a project, to be edited and taken in again: a workbook, or a file of values for each list. */
public final class ProjectTables {
    /** The sheet that says what the workbook is of. */
    public static final String ABOUT = "about";

    /** The sheet that says which columns there may be. */
    public static final String FIELDS = "fields";

    private static final String WRITTEN_FROM = "Project file";

    private static final String FILL = "E6ECEF";
    private static final String GREY = "808080";
    private static final int WIDEST = 40;
    private static final List<String> HOW = List.of(
            "Edit cells, add rows, take rows out; then: evenrise import --into PROJECT THIS-FILE",
            "An entry is known by its id; another id is another entry. The order of rows counts for nothing.",
            "An empty cell states nothing: a default counts. A list stands with commas between; [] is an empty one.",
            "What has no column stays as it is; a column that is taken out changes nothing. New columns may be any on"
                    + " the sheet 'fields', and notes of your own, whose header begins with x-.");

    private final String name;
    private final String sha256;
    private final List<ListSheet> sheets;

    private ProjectTables(String name, String sha256, List<ListSheet> sheets) {
        this.name = name;
        this.sha256 = sha256;
        this.sheets = sheets;
    }

    /** @param sha256 of the project's file */
    public static ProjectTables of(ProjectTree project, String name, String sha256) {
        return new ProjectTables(name, sha256, ListSheet.of(project));
    }

    /** Hash of the project's file that tables were written from, by their sheet about themselves. */
    public static Optional<String> writtenFrom(ReadTable about) {
        return about.rows().stream()
                .filter(row -> row.cell(0).text().equals(WRITTEN_FROM))
                .map(row -> row.cell(1).text())
                .findFirst();
    }

    /** How many rows each list has, in words. */
    public List<String> counts() {
        return sheets.stream()
                .map(sheet -> sheet.rows().size() + " " + sheet.name())
                .toList();
    }

    /** Files by their names. */
    public Map<String, byte[]> csv() {
        Map<String, byte[]> files = new LinkedHashMap<>();
        for (ListSheet sheet : sheets) {
            List<List<String>> rows = new ArrayList<>(List.of(sheet.header(), sheet.units()));
            sheet.rows()
                    .forEach(row ->
                            rows.add(row.stream().map(ProjectTables::text).toList()));
            files.put(sheet.name() + ".csv", Csv.of(rows).getBytes(StandardCharsets.UTF_8));
        }
        return files;
    }

    /** The same bytes for the same project. */
    public byte[] workbook() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "evenrise", null)) {
            sheets.forEach(sheet -> write(workbook.newWorksheet(sheet.name()), sheet));
            fields(workbook.newWorksheet(FIELDS));
            about(workbook.newWorksheet(ABOUT));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return SteadyZip.ofWorkbook(bytes.toByteArray());
    }

    private static String text(Object cell) {
        return cell instanceof Double number ? CellSpelling.text(Optional.of(number)) : cell.toString();
    }

    private static void write(Worksheet sheet, ListSheet list) {
        List<String> header = list.header();
        List<String> units = list.units();
        for (int column = 0; column < header.size(); column++) {
            sheet.value(0, column, header.get(column));
            sheet.value(1, column, units.get(column));
            int widest = Math.max(header.get(column).length(), 8);
            for (int row = 0; row < list.rows().size(); row++) {
                Object cell = list.rows().get(row).get(column);
                put(sheet, row + 2, column, cell);
                widest = Math.max(widest, text(cell).length());
            }
            sheet.width(column, Math.min(WIDEST, widest + 2));
        }
        sheet.range(0, 0, 0, header.size() - 1).style().bold().fillColor(FILL).set();
        sheet.range(1, 0, 1, header.size() - 1)
                .style()
                .fontColor(GREY)
                .wrapText(true)
                .verticalAlignment("top")
                .set();
        sheet.freezePane(1, 2);
    }

    private static void put(Worksheet sheet, int row, int column, Object cell) {
        if (cell instanceof Double number) {
            sheet.value(row, column, number);
        } else if (cell instanceof Boolean truth) {
            sheet.value(row, column, truth);
        } else if (!cell.toString().isEmpty()) {
            sheet.value(row, column, cell.toString());
        }
    }

    private static void fields(Worksheet sheet) {
        List<String> header = List.of("Sheet", "Column", "Takes", "Where empty", "Means");
        for (int column = 0; column < header.size(); column++) {
            sheet.value(0, column, header.get(column));
            sheet.style(0, column).bold().fillColor(FILL).set();
            sheet.width(column, List.of(16, 34, 44, 16, 90).get(column));
        }
        int row = 1;
        for (String list : FieldColumn.LISTS) {
            for (FieldColumn column : FieldColumn.of(list)) {
                sheet.value(row, 0, list);
                sheet.value(row, 1, column.path());
                sheet.value(row, 2, column.expected());
                sheet.value(row, 3, column.isRequired() ? "needed" : column.byDefault());
                sheet.value(row++, 4, column.meaning());
            }
        }
        sheet.freezePane(0, 1);
    }

    private void about(Worksheet sheet) {
        int row = 0;
        sheet.value(row, 0, Harmless.shown(name));
        sheet.style(row++, 0).bold().fontSize(14).set();
        sheet.value(row, 0, WRITTEN_FROM);
        sheet.value(row++, 1, sha256);
        for (String line : HOW) {
            sheet.value(row++, 0, line);
        }
        row++;
        for (String line : Cautions.comments()) {
            sheet.value(row++, 0, line);
        }
        sheet.width(0, 14);
        sheet.width(1, 70);
    }
}
