package evenrise.solver.report;

import evenrise.model.contract.Words;
import evenrise.model.event.PhaseReading;
import evenrise.model.event.Trace;
import evenrise.model.event.TraceStep;
import java.util.ArrayList;
import java.util.List;

/**
 * A rehearsal as comma-separated values (RFC 4180): one line for each step, then one for each reading, told apart by the
 * first column. A cell that a spreadsheet would take for a formula begins with an apostrophe.
 */
public final class RehearsalCsv {
    private static final String HEADER = "record,at_s,kind,load,text,loads_on,shown,locked,node,phase,drawn_a,bound_a";

    private RehearsalCsv() {}

    /** Header and lines, without line ends. */
    public static List<String> lines(Trace trace) {
        List<String> lines = new ArrayList<>();
        lines.add(HEADER);
        for (TraceStep step : trace.steps()) {
            lines.add(line(
                    "step",
                    Double.toString(step.atSeconds()),
                    Words.word(step.kind()),
                    step.load().orElse(""),
                    step.text(),
                    Integer.toString(step.loadsOn()),
                    step.shown().words(),
                    Boolean.toString(step.locked()),
                    "",
                    "",
                    "",
                    ""));
        }
        for (PhaseReading reading : trace.readings()) {
            lines.add(line(
                    "reading",
                    Double.toString(reading.atSeconds()),
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    reading.node(),
                    reading.phase().toString(),
                    Double.toString(reading.drawnAmps()),
                    Double.toString(reading.boundAmps())));
        }
        return lines;
    }

    private static String line(String... cells) {
        List<String> quoted = new ArrayList<>();
        for (String cell : cells) {
            quoted.add(quoted(cell));
        }
        return String.join(",", quoted);
    }

    private static String quoted(String cell) {
        boolean isFormula = cell.matches("(?s)[=+\\-@\t\r].*") && !cell.matches("-?[0-9.]+(E-?[0-9]+)?");
        String text = isFormula ? "'" + cell : cell;
        return text.matches("(?s).*[\",\r\n].*") ? '"' + text.replace("\"", "\"\"") + '"' : text;
    }
}
