package evenrise.solver.rendering;

import evenrise.solver.table.SteadyZip;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * A workbook whose formulas have their results beside them, for who looks and does not calculate, and whose names are
 * known on every sheet. The library writes neither, so both are put into what it has written.
 */
final class CalculatedWorkbook {
    private static final MathContext DIGITS = new MathContext(12);
    private static final int LONGEST_SHEET_NAME = 31;
    private static final Pattern FORMULA = Pattern.compile("<c r=\"([A-Z]+[0-9]+)\"([^>]*)>(<f>[^<]*</f>)</c>");

    /** Of our own; those of the format, as titles that print on every page, stay where they are. */
    private static final Pattern NAME =
            Pattern.compile("<definedName([^>]*) localSheetId=\"[0-9]+\"( name=\"(?!_xlnm)[^>]*>)");

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final Workbook workbook = new Workbook(bytes, "evenrise", null);
    private final Map<Worksheet, Map<String, Object>> results = new LinkedHashMap<>();
    private final Map<String, Double> named = new HashMap<>();
    private final Set<String> taken = new HashSet<>();

    /** @param subject of signs that need no care */
    CalculatedWorkbook(String title, String subject) {
        workbook.properties().setTitle(Cells.text(title)).setSubject(subject);
    }

    /** Named as near to that as a workbook allows. */
    Worksheet sheet(String name) {
        Worksheet sheet = workbook.newWorksheet(free(name));
        results.put(sheet, new HashMap<>());
        return sheet;
    }

    private String free(String wanted) {
        String plain = Cells.text(wanted).replaceAll("[\\\\/?*\\[\\]:'\"&<>]", "_");
        String name = cut(plain, LONGEST_SHEET_NAME);
        for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
            name = cut(plain, LONGEST_SHEET_NAME - 6) + " " + i;
        }
        return name;
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : text.substring(0, longest).strip();
    }

    /**
     * @param expression without signs that XML reads as its own
     * @param result what it comes to
     */
    void formula(Worksheet sheet, int row, int column, String expression, Object result) {
        sheet.formula(row, column, expression);
        results.get(sheet).put(cell(row, column), result);
    }

    /** A cell, known on every sheet. */
    void name(Worksheet sheet, int row, int column, String name) {
        name(sheet, row, row, column, name);
        Object value = results.get(sheet).getOrDefault(cell(row, column), sheet.value(row, column));
        if (value instanceof Number number) {
            named.put(name, number.doubleValue());
        }
    }

    /** Cells of a column, known on every sheet. */
    static void name(Worksheet sheet, int top, int bottom, int column, String name) {
        sheet.range(top, column, bottom, column).setName(name);
    }

    /** The number in the cell with that name. */
    double resultOf(String name) {
        return named.get(name);
    }

    /** {@code B7} for row 6, column 1. */
    static String cell(int row, int column) {
        return column(column) + (row + 1);
    }

    /** {@code $B$7:$B$9}. */
    static String range(int top, int bottom, int column) {
        return "$" + column(column) + "$" + (top + 1) + ":$" + column(column) + "$" + (bottom + 1);
    }

    private static String column(int column) {
        return (column >= 26 ? column(column / 26 - 1) : "") + (char) ('A' + column % 26);
    }

    /** Without what sums leave in the last digits of a machine's number, which a formula or a copy would show. */
    static Number plain(Number number) {
        return number instanceof Double it && Double.isFinite(it)
                ? (Number) new BigDecimal(it).round(DIGITS).doubleValue()
                : number;
    }

    byte[] finished() {
        try {
            workbook.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, UnaryOperator<String>> edited = new HashMap<>();
        results.values()
                .forEach(values -> edited.put(
                        "xl/worksheets/sheet" + (edited.size() + 1) + ".xml", xml -> withResults(xml, values)));
        // Whoever opens it calculates once more, so that no result here outlives a change of how a program counts.
        edited.put(
                "xl/workbook.xml",
                xml -> NAME.matcher(xml)
                        .replaceAll("<definedName$1$2")
                        .replace("</workbook>", "<calcPr fullCalcOnLoad=\"1\"/></workbook>"));
        return SteadyZip.ofWorkbook(bytes.toByteArray(), edited);
    }

    private static String withResults(String xml, Map<String, Object> values) {
        return FORMULA.matcher(xml).replaceAll(found -> {
            Object value = values.get(found.group(1));
            String head = "<c r=\"" + found.group(1) + "\"" + found.group(2);
            String cell = value instanceof Number number
                    ? head + ">" + found.group(3) + "<v>" + plain(number) + "</v></c>"
                    : head + " t=\"str\">" + found.group(3) + "<v>" + value + "</v></c>";
            return Matcher.quoteReplacement(cell);
        });
    }
}
