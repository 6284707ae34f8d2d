package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Words;
import evenrise.model.event.PhaseReading;
import evenrise.model.event.Trace;
import evenrise.model.event.TraceEntry;
import java.util.ArrayList;
import java.util.List;

/** A rehearsal as a table of values: one row for each step, then one for each reading, told apart by the first column. */
public final class RehearsalCsv {
    private static final List<String> HEADER = List.of(
            "record",
            "at_s",
            "kind",
            "load",
            "text",
            "loads_on",
            "shown",
            "locked",
            "node",
            "phase",
            "drawn_a",
            "bound_a");

    private RehearsalCsv() {}

    /** Header first. */
    public static List<List<String>> values(Trace trace) {
        List<List<String>> lines = new ArrayList<>();
        lines.add(HEADER);
        for (TraceEntry step : trace.steps()) {
            lines.add(List.of(
                    "step",
                    Decimals.value(step.atSeconds()),
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
            lines.add(List.of(
                    "reading",
                    Decimals.value(reading.atSeconds()),
                    "",
                    "",
                    "",
                    "",
                    "",
                    "",
                    reading.node(),
                    reading.phase().toString(),
                    Decimals.value(reading.drawnAmps()),
                    Decimals.value(reading.boundAmps())));
        }
        return lines;
    }
}
