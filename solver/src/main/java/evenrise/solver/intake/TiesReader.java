package evenrise.solver.intake;

import evenrise.solver.table.ReadTable;
import java.util.Locale;
import java.util.OptionalDouble;

/** Reads what a row says of system, panel, contactor, voltage to neutral and off delay, or notes what is wrong with it. */
final class TiesReader {
    /** As in the hard rule for voltages. */
    private static final double SAME_VOLTAGE = 0.05;

    private static final double MOST_SECONDS = 86_400;

    private final CellReader cells;
    private final double lineToNeutralVolts;

    TiesReader(CellReader cells, double lineToNeutralVolts) {
        this.cells = cells;
        this.lineToNeutralVolts = lineToNeutralVolts;
    }

    Ties of(ReadTable.Row row, String rack, boolean isSwitched) {
        String contactor = text(row, Meaning.CONTACTOR);
        if (!contactor.isEmpty() && !isSwitched) {
            cells.problem(
                    row,
                    Meaning.CONTACTOR,
                    "contactor '" + contactor
                            + "' for what is not switched. Maybe leave the cell empty, or say yes under"
                            + " 'Switched'.");
        }
        return new Ties(
                text(row, Meaning.SYSTEM),
                text(row, Meaning.FED_FROM),
                rack,
                contactor,
                volts(row),
                offAfter(row, isSwitched));
    }

    private OptionalDouble volts(ReadTable.Row row) {
        OptionalDouble volts = cells.amount(row, Meaning.LINE_TO_NEUTRAL, "v");
        if (volts.isPresent() && Math.abs(volts.getAsDouble() / lineToNeutralVolts - 1) > SAME_VOLTAGE) {
            cells.problem(
                    row,
                    Meaning.LINE_TO_NEUTRAL,
                    String.format(
                            Locale.ROOT,
                            "%.0f V to neutral, expected %.0f V within %.0f %%, which the supply has. Maybe list what"
                                    + " lives at another voltage apart, with a mapping of its own, and put the"
                                    + " transformer between them into the project.",
                            volts.getAsDouble(),
                            lineToNeutralVolts,
                            100 * SAME_VOLTAGE));
        }
        return volts;
    }

    private double offAfter(ReadTable.Row row, boolean isSwitched) {
        double seconds = cells.amount(row, Meaning.OFF_DELAY, "s").orElse(0);
        if (seconds < 0 || seconds > MOST_SECONDS) {
            cells.problem(
                    row,
                    Meaning.OFF_DELAY,
                    String.format(Locale.ROOT, "%.0f s, expected 0 to %.0f s.", seconds, MOST_SECONDS));
        } else if (seconds > 0 && !isSwitched) {
            cells.problem(
                    row,
                    Meaning.OFF_DELAY,
                    "an off delay for what is not switched. Maybe leave the cell empty, or say yes under 'Switched'.");
        }
        return seconds;
    }

    private String text(ReadTable.Row row, Meaning meaning) {
        return CellReader.isSilent(cells.cell(row, meaning)) ? "" : CellReader.cut(cells.text(row, meaning));
    }
}
