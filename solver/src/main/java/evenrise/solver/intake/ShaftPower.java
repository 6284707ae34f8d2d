package evenrise.solver.intake;

import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.motor.FullLoadCurrent;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Practice;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** Power on the shaft of a motor, and the line current that it makes. */
final class ShaftPower {
    /** By definition 550 foot-pounds a second. */
    private static final double WATTS_PER_HORSEPOWER = 745.7;

    private final CellReader cells;
    private final Mapping mapping;
    private final Notices notices;

    ShaftPower(CellReader cells, Mapping mapping, Notices notices) {
        this.cells = cells;
        this.mapping = mapping;
        this.notices = notices;
    }

    /** Whether a row states a power in horsepower, which only a motor has. */
    boolean isStated(ReadTable.Row row) {
        return Stream.concat(Stream.of(Meaning.SHAFT_POWER), Meaning.DRAWS.stream())
                .anyMatch(column -> cells.horsepower(row, column).isPresent());
    }

    /** A motor's kilowatts are those on its shaft, as nameplates state them, unless a power factor says otherwise. */
    OptionalDouble horsepower(ReadTable.Row row) {
        for (Meaning column : List.of(Meaning.SHAFT_POWER, Meaning.WATTS, Meaning.VOLT_AMPS, Meaning.AMPS)) {
            OptionalDouble stated = cells.horsepower(row, column);
            if (stated.isPresent()) {
                return stated;
            }
        }
        if (!CellReader.isSilent(cells.cell(row, Meaning.POWER_FACTOR))) {
            return OptionalDouble.empty();
        }
        for (Meaning column : List.of(Meaning.WATTS, Meaning.VOLT_AMPS)) {
            OptionalDouble watts =
                    cells.unit(row, column).equals("kw") ? cells.amount(row, column, "w") : OptionalDouble.empty();
            if (watts.isPresent() && watts.getAsDouble() > 0) {
                return OptionalDouble.of(watts.getAsDouble() / WATTS_PER_HORSEPOWER);
            }
        }
        return OptionalDouble.empty();
    }

    /** Full-load current by the tables of NEC 430.6(A)(1); where they have none, by an efficiency that is on the safe side. */
    double amps(int poles, double horsepower, double powerFactor, Set<String> guessed) {
        double phase = mapping.lineToNeutralVolts();
        double volts = LinePower.voltAmpsPerAmp(mapping.system(), Math.min(poles, 2), phase);
        OptionalDouble found = OptionalDouble.empty();
        if (mapping.practiceOfRatings() == Practice.NEC) {
            found = poles == 3
                    ? FullLoadCurrent.threePhaseAmps(horsepower, volts)
                    : FullLoadCurrent.singlePhaseAmps(horsepower, volts);
        }
        if (found.isPresent()) {
            notices.assume("a motor's full-load current is that of NEC tables 430.248 and 430.250 for its power on the"
                    + " shaft, in horsepower or kilowatts");
            return found.getAsDouble();
        }
        guessed.add("running_a");
        notices.assume(
                "a motor's power on the shaft counts over its power factor and an efficiency of 0.5 below 0.75 kW,"
                        + " 0.7 below 7.5 kW, 0.85 above, as no table has its current at this voltage: state its nameplate's"
                        + " ampere");
        double watts = WATTS_PER_HORSEPOWER * horsepower;
        return watts / efficiency(watts) / powerFactor / LinePower.voltAmpsPerAmp(mapping.system(), poles, phase);
    }

    /** Below those of class IE1 with four poles: 50 % at 0.12 kW, 72.1 % at 0.75 kW, 86 % at 7.5 kW (IEC 60034-30-1, from memory). */
    private static double efficiency(double shaftWatts) {
        return shaftWatts < 750 ? 0.5 : shaftWatts < 7500 ? 0.7 : 0.85;
    }
}
