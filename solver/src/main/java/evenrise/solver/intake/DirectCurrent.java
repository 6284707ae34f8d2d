package evenrise.solver.intake;

import evenrise.model.intake.Mapping;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What lives on direct current is fed by a power supply, which is what a breaker here feeds. Where the list does not name that
 * supply, the piece is kept with what the supply is likely to draw, unswitched, and asked about.
 */
final class DirectCurrent {
    /** Of a power supply at full load; common practice, no source. */
    private static final double EFFICIENCY = 0.85;

    private static final Pattern NUMBER = Pattern.compile("[0-9]+(?:[.,][0-9]+)?");

    private final CellReader cells;
    private final double phaseVolts;

    DirectCurrent(CellReader cells, Mapping mapping) {
        this.cells = cells;
        this.phaseVolts = mapping.lineToNeutralVolts();
    }

    /** Whether a row's voltage says so. */
    boolean is(ReadTable.Row row) {
        return Connection.isDirectCurrent(cells.text(row, Meaning.VOLTS));
    }

    /**
     * What the supply of a piece draws, which is asked about; empty where the list says nothing of the piece, or what is a
     * problem, which is noted.
     *
     * @param gear of the supply
     * @param guessed gets the keys of what is not stated
     */
    Optional<CurrentReader.Current> of(ReadTable.Row row, String name, int pieces, Gear gear, Set<String> guessed) {
        OptionalDouble amps = amps(row, gear);
        double drawn = amps.orElse(0);
        if (!(drawn >= CurrentReader.LEAST_AMPS && drawn <= CurrentReader.MOST_AMPS)) {
            return Optional.empty();
        }
        ask(row, name, pieces, drawn, guessed);
        return Optional.of(new CurrentReader.Current(
                amps,
                gear.usual().idleRatio() * drawn,
                gear.usual().inrushPeakAmps(drawn),
                gear.usual().powerFactor(),
                OptionalDouble.empty()));
    }

    private OptionalDouble amps(ReadTable.Row row, Gear gear) {
        double powerFactor = gear.usual().powerFactor();
        OptionalDouble found = OptionalDouble.empty();
        for (Meaning column : List.of(Meaning.WATTS, Meaning.VOLT_AMPS, Meaning.AMPS)) {
            Meaning measured =
                    new HeaderUnit(cells.unit(row, column)).measured().orElse(column);
            OptionalDouble stated =
                    cells.amount(row, column, measured == Meaning.AMPS ? "a" : measured == Meaning.WATTS ? "w" : "va");
            if (stated.isPresent() && found.isEmpty()) {
                double watts = stated.getAsDouble() * (measured == Meaning.AMPS ? mostVolts(row) : 1);
                found = OptionalDouble.of(watts / EFFICIENCY / powerFactor / phaseVolts);
            }
        }
        return found;
    }

    /** Of a range its upper end. */
    private double mostVolts(ReadTable.Row row) {
        double most = 0;
        Matcher numbers = NUMBER.matcher(cells.text(row, Meaning.VOLTS));
        while (numbers.find()) {
            most = Math.max(most, Double.parseDouble(numbers.group().replace(',', '.')));
        }
        return most * (HeaderWords.folded(cells.text(row, Meaning.VOLTS)).contains("kv") ? 1000 : 1);
    }

    private void ask(ReadTable.Row row, String name, int pieces, double amps, Set<String> guessed) {
        guessed.addAll(Set.of("running_a", "idle_a", "inrush_peak_a", "power_factor", "poles", "switched"));
        String volts = CellReader.cut(cells.text(row, Meaning.VOLTS));
        cells.readByName(row, Meaning.VOLTS, "direct current, behind a supply", ReadValue.How.ASKED);
        cells.ask(
                row,
                String.format(
                        Locale.ROOT,
                        "what feeds %s'%s' with '%s'? No breaker here gives direct current. Until the list names the power"
                                + " supply, each piece counts for %.2f A at %.0f V, unswitched: what a supply of efficiency"
                                + " %.2f draws for it, a guess and no bound. Where a supply in the list feeds it, give it"
                                + " the quantity 0.",
                        pieces == 1 ? "" : pieces + " × ",
                        CellReader.cut(name),
                        volts,
                        amps,
                        phaseVolts,
                        EFFICIENCY));
    }
}
