package evenrise.solver.intake;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.LinePower;
import evenrise.model.intake.Mapping;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Set;

/** What one piece of a row draws: its line current, power factor, idle current and inrush; what is wrong is noted. */
final class CurrentReader {
    static final double MOST_AMPS = 6300;
    private static final double MOST_INRUSH_AMPS = 1e6;

    /** Below it no piece draws anything that counts, and ratios of its figures say nothing. */
    static final double LEAST_AMPS = 0.001;

    /** Up to which rating a breaker is kept free for what nobody knows. */
    private static final double MOST_RESERVED_AMPS = 63;

    private static final List<Meaning> FIGURES = List.of(Meaning.AMPS, Meaning.VOLT_AMPS, Meaning.WATTS);

    private static final double LEAST_POWER_FACTOR = 0.01;

    /**
     * @param amps empty where neither it nor a power is stated, or where that is a problem
     * @param powerFactor 0 where it is a problem
     * @param horsepower of a motor, where stated
     */
    record Current(
            OptionalDouble amps,
            double idleAmps,
            double inrushPeakAmps,
            double powerFactor,
            OptionalDouble horsepower) {}

    private final CellReader cells;
    private final Mapping mapping;
    private final Notices notices;
    private final ShaftPower shafts;

    CurrentReader(CellReader cells, Mapping mapping, Notices notices) {
        this.cells = cells;
        this.mapping = mapping;
        this.notices = notices;
        this.shafts = new ShaftPower(cells, mapping, notices);
    }

    ShaftPower shafts() {
        return shafts;
    }

    /**
     * @param poles 0 where they are a problem, which is noted
     * @param ratedAmps rating of its breakers together, else of its outlet, where stated
     * @param hasBreaker whether its breaker is stated, which then tells what it may draw where nothing else does
     * @param guessed gets the keys of what is not stated
     * @param before problems that were noted above this row: of a row with others, that nothing tells its current says little
     */
    Current of(
            ReadTable.Row row,
            String name,
            Gear gear,
            int poles,
            OptionalDouble ratedAmps,
            boolean hasBreaker,
            Set<String> guessed,
            int before) {
        double powerFactor = powerFactor(row, gear, guessed);
        OptionalDouble horsepower = gear == Gear.MOTOR ? shafts.horsepower(row) : OptionalDouble.empty();
        OptionalDouble amps = OptionalDouble.empty();
        if (poles > 0 && powerFactor > 0) {
            boolean isByTable = horsepower.isPresent()
                    && cells.amount(row, Meaning.AMPS, "a").isEmpty();
            amps = isByTable
                    ? OptionalDouble.of(shafts.amps(poles, horsepower.getAsDouble(), powerFactor, guessed))
                    : amps(row, poles, powerFactor, horsepower.isPresent(), guessed);
        }
        boolean isOpen = isLeftOpen(row) || hasBreaker && isSilent(row);
        if (amps.isEmpty() && poles > 0 && notices.problems() == before && isOpen) {
            amps = OptionalDouble.of(reserved(row, name, ratedAmps, hasBreaker));
            guessed.add("running_a");
        } else if (amps.isEmpty() && notices.problems() == before) {
            cells.readByName(row, drawn(), "nothing that it draws", ReadValue.How.PROBLEM);
            cells.problem(
                    row,
                    "'" + CellReader.cut(name) + "' has neither watts, volt-amperes nor amperes. Maybe the "
                            + "column is headed otherwise: name it in a mapping file.");
        }
        double drawn = amps.orElse(0);
        return new Current(
                amps,
                idle(row, poles, powerFactor, guessed).orElse(gear.usual().idleRatio() * drawn),
                stated(row, Meaning.INRUSH, "inrush_peak_a", MOST_INRUSH_AMPS, guessed)
                        .orElse(gear.usual().inrushPeakAmps(drawn)),
                powerFactor,
                horsepower);
    }

    /** The column that a list has for what pieces draw. */
    private Meaning drawn() {
        return FIGURES.stream().filter(cells::hasColumn).findFirst().orElse(Meaning.AMPS);
    }

    private boolean isLeftOpen(ReadTable.Row row) {
        return FIGURES.stream().anyMatch(meaning -> cells.isLeftOpen(row, meaning));
    }

    private boolean isSilent(ReadTable.Row row) {
        return FIGURES.stream().allMatch(meaning -> CellReader.isSilent(cells.cell(row, meaning)));
    }

    /** What nobody knows yet keeps a whole breaker free: as much as its own, its outlet, or a usual breaker, may carry. */
    private double reserved(ReadTable.Row row, String name, OptionalDouble ratedAmps, boolean hasBreaker) {
        double stated = ratedAmps.orElse(mapping.usualBreakerAmps());
        double rating = hasBreaker ? stated : Math.min(stated, MOST_RESERVED_AMPS);
        double amps = mapping.continuousFraction() * rating;
        Meaning open = FIGURES.stream()
                .filter(meaning -> cells.isLeftOpen(row, meaning))
                .findFirst()
                .orElse(drawn());
        cells.readByName(row, open, Decimals.toThousandths(amps) + " A reserved", ReadValue.How.ASKED);
        cells.ask(
                row,
                String.format(
                        Locale.ROOT,
                        "what does '%s' draw? The list leaves it open; %.1f A is reserved for each piece, all that a"
                                + " breaker of %.0f A carries, which is a guess and no bound.",
                        CellReader.cut(name),
                        amps,
                        rating));
        return amps;
    }

    /** Current before the first signal; a power is turned into one by the power factor at full use. */
    private OptionalDouble idle(ReadTable.Row row, int poles, double powerFactor, Set<String> guessed) {
        String unit = cells.unit(row, Meaning.IDLE);
        if (poles == 0 || powerFactor == 0 || !unit.matches("m?k?w(atts?)?|k?va")) {
            return stated(row, Meaning.IDLE, "idle_a", MOST_AMPS, guessed);
        }
        boolean isActive = unit.contains("w");
        double perAmp = LinePower.voltAmpsPerAmp(mapping.system(), poles, mapping.lineToNeutralVolts());
        OptionalDouble power = cells.amount(row, Meaning.IDLE, isActive ? "w" : "va");
        if (power.isEmpty()) {
            return stated(row, Meaning.IDLE, "idle_a", MOST_AMPS, guessed);
        }
        double amps = power.getAsDouble() / perAmp / (isActive ? powerFactor : 1);
        if (!(amps >= 0 && amps <= MOST_AMPS)) {
            cells.problem(
                    row,
                    Meaning.IDLE,
                    String.format(
                            Locale.ROOT,
                            "'%s' makes %s A a piece, expected 0 to %,.0f A.",
                            CellReader.cut(cells.text(row, Meaning.IDLE)),
                            amps,
                            MOST_AMPS));
            return OptionalDouble.empty();
        }
        if (isActive) {
            guessed.add("idle_a");
            notices.assume(
                    "an idle power counts by the power factor at full use; at standby that is often lower, and the"
                            + " current higher");
        }
        return OptionalDouble.of(amps);
    }

    private double powerFactor(ReadTable.Row row, Gear gear, Set<String> guessed) {
        int before = notices.problems();
        OptionalDouble stated = cells.amount(row, Meaning.POWER_FACTOR, "");
        if (stated.isEmpty()) {
            guessed.add("power_factor");
            notices.assume("no power factor is stated: what is usual for its kind of gear");
            return notices.problems() == before ? gear.usual().powerFactor() : 0;
        }
        String text = cells.text(row, Meaning.POWER_FACTOR);
        double factor = stated.getAsDouble();
        factor = factor > 1 && text.contains("%") ? factor / 100 : factor;
        if (!(factor >= LEAST_POWER_FACTOR && factor <= 1)) {
            cells.problem(
                    row, Meaning.POWER_FACTOR, "'" + CellReader.cut(text) + "', expected at least 0.01, at most 1.");
            return 0;
        }
        return factor;
    }

    /** Empty where it is not stated, or a problem that is noted. */
    private OptionalDouble stated(ReadTable.Row row, Meaning meaning, String key, double most, Set<String> guessed) {
        OptionalDouble stated = cells.amount(row, meaning, "a");
        if (stated.isEmpty()) {
            guessed.add(key);
            notices.assume("no " + meaning.word() + " current is stated: what is usual for its kind of gear");
        } else if (cells.isAbout(row, meaning)) {
            guessed.add(key);
        }
        if (stated.isPresent() && (stated.getAsDouble() < 0 || stated.getAsDouble() > most)) {
            cells.problem(
                    row,
                    meaning,
                    String.format(
                            Locale.ROOT,
                            "'%s', expected 0 to %,.0f A.",
                            CellReader.cut(cells.text(row, meaning)),
                            most));
        }
        return stated;
    }

    /** Line current of one piece, from ampere where stated, else from volt-amperes or watts. */
    private OptionalDouble amps(
            ReadTable.Row row, int poles, double powerFactor, boolean isShaftPower, Set<String> guessed) {
        double perAmp = LinePower.voltAmpsPerAmp(mapping.system(), poles, mapping.lineToNeutralVolts());
        OptionalDouble found = OptionalDouble.empty();
        Meaning from = Meaning.AMPS;
        for (Meaning column : FIGURES) {
            // Every column is read, so that what is wrong with any is told in one pass.
            boolean isShaft = isShaftPower && cells.unit(row, column).matches("hp|kw");
            OptionalDouble amps = isShaft ? OptionalDouble.empty() : amps(row, column, perAmp, powerFactor);
            if (found.isEmpty() && amps.isPresent()) {
                found = amps;
                from = column;
            }
        }
        if (found.isPresent() && !(found.getAsDouble() >= LEAST_AMPS && found.getAsDouble() <= MOST_AMPS)) {
            cells.problem(
                    row,
                    from,
                    String.format(
                            Locale.ROOT,
                            "'%s' makes %s A a piece, expected at least 0.001, at most 6300 A.",
                            CellReader.cut(cells.text(row, from)),
                            found.getAsDouble()));
            return OptionalDouble.empty();
        }
        if (found.isPresent() && cells.isAbout(row, from)) {
            guessed.add("running_a");
        }
        return found;
    }

    /** The unit of a cell goes before what its column holds: ampere among kilowatts are ampere. */
    private OptionalDouble amps(ReadTable.Row row, Meaning column, double perAmp, double powerFactor) {
        Meaning measured = new HeaderUnit(cells.unit(row, column)).measured().orElse(column);
        return switch (measured) {
            case AMPS -> cells.amount(row, column, "a");
            case VOLT_AMPS -> over(cells.amount(row, column, "va"), perAmp);
            default -> over(cells.amount(row, column, "w"), perAmp * powerFactor);
        };
    }

    private static OptionalDouble over(OptionalDouble power, double perAmp) {
        return power.isPresent() ? OptionalDouble.of(power.getAsDouble() / perAmp) : power;
    }
}
