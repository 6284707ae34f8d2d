package evenrise.solver.intake;

import evenrise.model.plan.Cautions;
import evenrise.solver.table.Csv;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** A blank equipment list: headers that are recognised, and two rows to show how they are filled in. */
public final class Template {
    /** Ends the names of the rows that only show how a list is filled in. */
    static final String EXAMPLE = " (example, not imported)";

    private static final List<String> HEADERS = List.of(
            "Tag",
            "Quantity",
            "Name",
            "Room",
            "Rack",
            "Role",
            "Zone",
            "Feed",
            "Switched",
            "Life safety",
            "Outlet (A)",
            "Voltage (V)",
            "Watts (W)",
            "Amps (A)",
            "Idle (A)",
            "Inrush (A)",
            "Power factor",
            "Notes",
            "System",
            "Fed from",
            "Circuit",
            "Breaker",
            "Contactor",
            "Line to neutral (V)",
            "Off delay (s)",
            "Quantity low",
            "Quantity high");
    private static final List<List<Object>> EXAMPLES = List.of(
            List.of(
                    "DSP-1",
                    2,
                    "Signal processor" + EXAMPLE,
                    "Rack room",
                    "R1",
                    "processing",
                    "main",
                    "A",
                    "yes",
                    "no",
                    "",
                    120,
                    "",
                    2.2,
                    2.0,
                    45,
                    0.95,
                    "",
                    "hall",
                    "P1",
                    "",
                    "",
                    "",
                    120,
                    "",
                    2,
                    4),
            List.of(
                    "AMP-1",
                    4,
                    "Four-channel amplifier" + EXAMPLE,
                    "Loft",
                    "L1",
                    "amplifier",
                    "main",
                    "",
                    "yes",
                    "no",
                    20,
                    208,
                    1800,
                    "",
                    1.2,
                    120,
                    0.95,
                    "",
                    "hall",
                    "P2",
                    "",
                    "20/2",
                    "K1",
                    120,
                    "",
                    "",
                    ""));

    private static final int NAME = HEADERS.indexOf("Name");

    private Template() {}

    /** As CSV, UTF-8. */
    public static byte[] csv() {
        List<List<String>> rows = new ArrayList<>(List.of(HEADERS));
        EXAMPLES.forEach(row -> rows.add(row.stream().map(String::valueOf).toList()));
        return Csv.of(rows).getBytes(StandardCharsets.UTF_8);
    }

    /** As a workbook. */
    public static byte[] workbook() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "evenrise", null)) {
            Worksheet sheet = workbook.newWorksheet("Equipment");
            for (int column = 0; column < HEADERS.size(); column++) {
                sheet.value(0, column, HEADERS.get(column));
                sheet.style(0, column).bold().set();
                sheet.width(column, column == NAME ? 46 : 14);
            }
            for (int row = 0; row < EXAMPLES.size(); row++) {
                for (int column = 0; column < HEADERS.size(); column++) {
                    Object value = EXAMPLES.get(row).get(column);
                    if (value instanceof Number number) {
                        sheet.value(row + 1, column, number);
                    } else if (!value.toString().isEmpty()) {
                        sheet.value(row + 1, column, value.toString());
                    }
                }
            }
            sheet.freezePane(0, 1);
            Worksheet cautions = workbook.newWorksheet("Cautions");
            List<String> lines = Cautions.comments();
            for (int row = 0; row < lines.size(); row++) {
                cautions.value(row, 0, lines.get(row));
            }
            cautions.width(0, 120);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
