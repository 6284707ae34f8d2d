package evenrise.solver.report;

import evenrise.model.file.Json;
import evenrise.model.plan.Cautions;
import evenrise.solver.rework.MeasuredColumn;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;

/** What the table of measured currents looks like, as metadata for tabular data (W3C, CSV on the Web). */
public final class MeasuredTable {
    private static final String CONTEXT = "http://www.w3.org/ns/csvw";

    /** A letter of a phase, or its number, as on the conductor. */
    private static final String PHASE = "[A-Ca-c]|[Ll]?[1-3]";

    private MeasuredTable() {}

    /** The metadata as JSON, with a line break at its end. */
    public static String text() {
        Map<String, Object> table = new LinkedHashMap<>();
        table.put("@context", CONTEXT);
        table.put("dc:title", "evenrise measured currents");
        table.put("dc:description", String.join(" ", Cautions.ALL));
        table.put("dialect", Map.of("commentPrefix", "#"));
        table.put(
                "tableSchema",
                Map.of(
                        "columns",
                        Stream.of(MeasuredColumn.values())
                                .map(MeasuredTable::column)
                                .toList()));
        return Json.of(table) + "\n";
    }

    private static Map<String, Object> column(MeasuredColumn column) {
        Map<String, Object> described = new LinkedHashMap<>();
        described.put("name", column.names().get(0));
        described.put("titles", column.names());
        described.put("dc:description", column.meaning());
        described.put("required", column.isNeeded());
        described.put("datatype", datatype(column));
        return described;
    }

    private static Object datatype(MeasuredColumn column) {
        Map<String, Object> type = new LinkedHashMap<>();
        if (column.mostAmps().isPresent()) {
            type.put("base", "number");
            type.put("minimum", 0);
            type.put("maximum", column.mostAmps().getAsDouble());
        } else {
            type.put("base", "string");
            if (column == MeasuredColumn.PHASE) {
                type.put("format", PHASE);
            }
        }
        return type;
    }
}
