package evenrise.solver.table;

import evenrise.model.plan.Cautions;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Tables of values as RFC 4180 has them, with remarks and the cautions as lines of comment below. A text that a spreadsheet would
 * take for a formula, or a breaker's {@code 20/2} for a date, begins with an apostrophe; one that begins like a comment is
 * quoted.
 */
public final class Csv {
    /** Signs with which a formula begins, or the field behind it. */
    private static final String ACTS = "=+-@\t\r";

    private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9.]+([eE][-+]?[0-9]+)?");

    private static final Pattern DATE = Pattern.compile("[0-9]{1,4}/[0-9]{1,2}(/[0-9]{1,4})?");

    /** Begins a remark, which is no row for whoever reads the table. */
    static final String NOTE = "# Note: ";

    private Csv() {}

    public static String of(List<List<String>> rows) {
        return of(rows, List.of());
    }

    /** @param remarks what must be read with its figures: lines of comment before the cautions */
    public static String of(List<List<String>> rows, Collection<String> remarks) {
        StringWriter text = new StringWriter();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            for (List<String> row : rows) {
                printer.printRecord(row.stream().map(Csv::inert).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        remarks.forEach(
                line -> text.append(NOTE).append(line.replaceAll("\\R", " ")).append("\r\n"));
        Cautions.comments().forEach(line -> text.append(line).append("\r\n"));
        return text.toString();
    }

    private static String inert(String cell) {
        boolean actsFirst = !cell.isEmpty() && ACTS.indexOf(cell.charAt(0)) >= 0;
        boolean turns = actsFirst && !NUMBER.matcher(cell).matches()
                || DATE.matcher(cell).matches();
        return turns ? "'" + cell : cell;
    }
}
