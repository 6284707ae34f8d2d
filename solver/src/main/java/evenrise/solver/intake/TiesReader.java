package evenrise.solver.intake;

import evenrise.model.intake.Mapping;
import evenrise.model.intake.PanelOfRoom;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Reads what a row says of system, panel, contactor, voltage to neutral and off delay, or notes what is wrong with it. */
final class TiesReader {
    /** As in the hard rule for voltages. */
    private static final double SAME_VOLTAGE = 0.05;

    private static final double MOST_SECONDS = 86_400;

    private final CellReader cells;
    private final double lineToNeutralVolts;
    private final List<PanelOfRoom> panels;

    TiesReader(CellReader cells, Mapping mapping) {
        this.cells = cells;
        this.lineToNeutralVolts = mapping.lineToNeutralVolts();
        this.panels = mapping.panelsOfRooms();
    }

    Ties of(ReadTable.Row row, Whereabouts whereabouts, boolean isSwitched) {
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
                panel(row, whereabouts.roomAlone()),
                whereabouts.rack(),
                contactor,
                volts(row),
                offAfter(row, isSwitched));
    }

    /** What its row says, else what the mapping says of its room. */
    private String panel(ReadTable.Row row, String room) {
        String own = text(row, Meaning.FED_FROM);
        if (!own.isEmpty()) {
            cells.read(row, Meaning.FED_FROM, "panel " + own, ReadValue.How.STATED);
            return own;
        }
        return panels.stream()
                .filter(each -> HeaderWords.words(each.room()).equals(HeaderWords.words(room)))
                .map(each -> CellReader.cut(each.panel()))
                .findFirst()
                .orElse("");
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
