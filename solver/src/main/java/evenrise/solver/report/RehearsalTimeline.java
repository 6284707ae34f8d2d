package evenrise.solver.report;

import evenrise.model.event.Display;
import evenrise.model.event.PhaseReading;
import evenrise.model.event.Trace;
import evenrise.model.event.TraceEntry;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A rehearsal as strips over time: what is shown to the operator, how many loads are on, how high the supply peaks. One
 * column is a round number of seconds; a strip shows the last state of its column, or the highest current.
 */
final class RehearsalTimeline {
    private static final int COLUMNS = 80;
    private static final double[] ROUND = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1800, 3600};

    private final Trace trace;
    private final double secondsPerColumn;
    private final int columns;

    private RehearsalTimeline(Trace trace) {
        this.trace = trace;
        double wanted = trace.endSeconds() / (COLUMNS - 1);
        secondsPerColumn =
                Arrays.stream(ROUND).filter(each -> each >= wanted).findFirst().orElse(Math.ceil(wanted / 3600) * 3600);
        columns = 1 + (int) Math.floor(trace.endSeconds() / secondsPerColumn + 1e-9);
    }

    /** @param switched loads that could be on */
    static List<String> lines(Trace trace, int switched, Paint paint) {
        RehearsalTimeline it = new RehearsalTimeline(trace);
        Section section = new Section(
                paint,
                "Timeline, one column " + Numbers.seconds(it.secondsPerColumn)
                        + " s, of each strip tenths of its most");
        List<String> lines = new ArrayList<>(section.lines());
        lines.add("  seconds   " + it.scale());
        lines.add("  happens   " + it.marks());
        lines.add("  shown     " + it.shown());
        lines.add("  loads on  " + it.loads(switched) + "  9 = " + switched);
        double most = it.mostAmps();
        lines.add("  peak      " + it.amps(most) + "  9 = " + Numbers.amps(most) + " A");
        lines.addAll(Wrap.lines("  ", it.legend()));
        return lines;
    }

    private int column(double seconds) {
        return Math.min(columns - 1, (int) Math.floor(seconds / secondsPerColumn + 1e-9));
    }

    private String scale() {
        char[] line = blank();
        for (int column = 0; column < columns; column += 10) {
            String label = Numbers.seconds(column * secondsPerColumn).replaceAll("\\.0$", "");
            for (int i = 0; column + label.length() <= columns && i < label.length(); i++) {
                line[column + i] = label.charAt(i);
            }
        }
        return new String(line).stripTrailing();
    }

    private String marks() {
        char[] line = blank();
        trace.episodes().forEach(each -> line[column(each.fromSeconds())] = '|');
        return new String(line).stripTrailing();
    }

    private String shown() {
        char[] line = blank();
        fill(line, step -> sign(step.shown()), sign(Display.DOWN));
        return new String(line);
    }

    private String loads(int switched) {
        char[] line = blank();
        fill(line, step -> tenth(step.loadsOn(), switched), '0');
        return new String(line);
    }

    private interface Sign {
        char of(TraceEntry step);
    }

    private void fill(char[] line, Sign sign, char before) {
        char last = before;
        int next = 0;
        for (int column = 0; column < columns; column++) {
            for (; next < trace.steps().size() && column(trace.steps().get(next).atSeconds()) <= column; next++) {
                last = sign.of(trace.steps().get(next));
            }
            line[column] = last;
        }
    }

    private double mostAmps() {
        return trace.readings().stream()
                .filter(each -> each.node().equals(NodeFigures.SUPPLY))
                .mapToDouble(PhaseReading::drawnAmps)
                .max()
                .orElse(0);
    }

    /** Highest current of a column; where nothing happens, what is left of the last reading is not known and stays blank. */
    private String amps(double most) {
        double[] highest = new double[columns];
        Arrays.fill(highest, -1);
        for (PhaseReading each : trace.readings()) {
            if (each.node().equals(NodeFigures.SUPPLY)) {
                int column = column(each.atSeconds());
                highest[column] = Math.max(highest[column], each.drawnAmps());
            }
        }
        StringBuilder line = new StringBuilder();
        for (double each : highest) {
            line.append(each < 0 ? '.' : tenth(each, most));
        }
        return line.toString();
    }

    /** A digit: 0 for nothing, 9 for the most. */
    private static char tenth(double value, double most) {
        return most <= 0 || value <= 0
                ? '0'
                : (char) ('0' + Math.max(1, Math.min(9, (int) Math.ceil(9 * value / most - 1e-9))));
    }

    private char[] blank() {
        char[] line = new char[columns];
        Arrays.fill(line, ' ');
        return line;
    }

    private static char sign(Display shown) {
        return switch (shown) {
            case DOWN -> '_';
            case COMING_UP -> '/';
            case UP -> '=';
            case PARTLY_UP -> '-';
            case GOING_DOWN -> '\\';
            case NOT_CLEAR -> '?';
            case EMERGENCY -> 'E';
            case SUPPLY_LOW -> 'v';
            case WAITING -> 'w';
        };
    }

    private String legend() {
        List<String> parts = new ArrayList<>();
        for (Display each : Display.values()) {
            boolean occurs = trace.steps().stream().anyMatch(step -> step.shown() == each);
            if (occurs) {
                parts.add(sign(each) + " " + each.words());
            }
        }
        return "Shown: " + String.join(", ", parts) + ". Peak: highest current of the supply's phases in the column; "
                + ". where nothing switches.";
    }
}
