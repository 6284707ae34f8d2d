package evenrise.solver.intake;

import evenrise.model.intake.Mapping;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.solver.table.ReadTable;
import java.util.Optional;
import java.util.Set;

/** Tells the poles of a piece's breaker, by its voltage, its phases and the breaker that the list states. */
final class BreakerPolesReader {
    private final CellReader cells;
    private final Header header;
    private final Mapping mapping;
    private final Notices notices;

    BreakerPolesReader(CellReader cells, Header header, Mapping mapping, Notices notices) {
        this.cells = cells;
        this.header = header;
        this.mapping = mapping;
        this.notices = notices;
    }

    /** Without poles where something is a problem, which is noted. */
    BreakerPoles of(ReadTable.Row row, Optional<StatedBreaker> breaker, Set<String> guessed) {
        if (!cells.isReadable(row, Meaning.VOLTS)) {
            return BreakerPoles.PROBLEM;
        }
        String written = written(row);
        boolean isStated = !CellReader.isSilent(cells.cell(row, Meaning.VOLTS)) || written.contains("3ph");
        int hint = breaker.map(this::lines).orElse(0);
        Connection connection = Connection.of(
                written,
                header.units().getOrDefault(Meaning.VOLTS, "v"),
                mapping.system(),
                mapping.lineToNeutralVolts(),
                hint);
        if (connection.poles() == 0) {
            cells.problem(row, Meaning.VOLTS, connection.problem());
            return BreakerPoles.PROBLEM;
        }
        cells.read(
                row,
                Meaning.VOLTS,
                connection.poles() == 1 ? "one pole" : connection.poles() + " poles",
                how(connection, isStated));
        boolean isToldByBreaker = !isStated && hint > 0;
        if (!connection.assumed().isEmpty() && !isToldByBreaker) {
            notices.assume(connection.assumed());
            guessed.add("poles");
        }
        if (cells.isFromElsewhere(row, Meaning.VOLTS)) {
            notices.assume(
                    "a voltage, or phases, beside a power or a feed count where the column for them says nothing");
        }
        if (!connection.question().isEmpty()) {
            cells.ask(row, connection.question());
        }
        return breaker.isEmpty()
                ? BreakerPoles.of(connection.poles())
                : onStated(row, breaker.get(), isStated ? connection.poles() : 0, hint, guessed);
    }

    private static ReadValue.How how(Connection connection, boolean isStated) {
        if (!connection.question().isEmpty()) {
            return ReadValue.How.ASKED;
        }
        return isStated && connection.assumed().isEmpty() ? ReadValue.How.STATED : ReadValue.How.GUESSED;
    }

    /** Voltage and phases as one text. */
    private String written(ReadTable.Row row) {
        String volts = cells.text(row, Meaning.VOLTS);
        String phases = cells.text(row, Meaning.PHASES).strip();
        String count = phases.replaceAll("(?i)\\s*(ph(ases?)?|~|ø|φ|phasig|phases?)\\.?$", "");
        boolean isCount = count.matches("[13]") && !volts.matches("(?i).*(ph|~|ø).*");
        return isCount
                ? (CellReader.isSilent(cells.cell(row, Meaning.VOLTS)) ? "" : volts + ", ") + count + "ph"
                : volts;
    }

    /** Poles of a breaker that stand on lines; 0 where it does not state them. */
    private int lines(StatedBreaker breaker) {
        boolean isThreeTimes = breaker.poles() == 0 && breaker.times() == 3;
        if (isThreeTimes && mapping.system() == PhaseSystem.THREE_PHASE) {
            return 3;
        }
        return isOnNeutral(breaker) ? 1 : breaker.poles();
    }

    /** At 230 V to neutral, two poles are most often a line and its neutral; on one line they always are. */
    private boolean isOnNeutral(StatedBreaker breaker) {
        return breaker.poles() == 2
                && (mapping.practiceOfRatings() == Practice.IEC || mapping.system() == PhaseSystem.SINGLE_PHASE);
    }

    /** @param byVoltage poles that the voltage asks for; 0 where the list states none */
    private BreakerPoles onStated(
            ReadTable.Row row, StatedBreaker breaker, int byVoltage, int hint, Set<String> guessed) {
        String text = "breaker '" + CellReader.cut(cells.text(row, Meaning.BREAKER)) + "'";
        if (breaker.hasNeutral() || isOnNeutral(breaker) && byVoltage <= 1) {
            notices.assume("a breaker's pole for the neutral takes no slot of its own here");
        }
        int lines = isOnNeutral(breaker) && byVoltage == 2 ? 2 : hint;
        int poles = lines > 0 ? lines : Math.max(byVoltage, 1);
        if (poles > mapping.system().phases().size()) {
            cells.problem(
                    row,
                    Meaning.BREAKER,
                    text + " has " + poles + " poles, of at most "
                            + mapping.system().phases().size() + " that this supply has. Maybe the mapping's system is"
                            + " another.");
            return BreakerPoles.PROBLEM;
        }
        if (byVoltage > poles) {
            cells.problem(
                    row,
                    Meaning.BREAKER,
                    text + " has " + (poles == 1 ? "one pole" : poles + " poles") + ", the voltage asks for "
                            + byVoltage + ". Maybe one of both is another.");
            return BreakerPoles.PROBLEM;
        }
        boolean isSpelledPoles = breaker.poles() == 0 && breaker.times() > 1 && breaker.times() == poles;
        int breakers = isSpelledPoles ? 1 : breaker.times();
        if (isSpelledPoles) {
            notices.assume("a breaker such as '2 x 16 A' of a piece on as many poles is one breaker of those poles");
        }
        if (byVoltage == 0) {
            guessed.add("poles");
            notices.assume("poles told by the breaker where no voltage is stated");
        } else if (byVoltage < poles) {
            cells.ask(
                    row,
                    text + " has " + poles + " poles, the voltage asks for " + byVoltage
                            + ": what does each carry? Each" + " counts with the whole.");
        }
        if (breakers > 1) {
            cells.ask(
                    row,
                    text + ": " + breakers + " breakers feed one piece, and each counts with an equal part of it."
                            + " Is that so? Where each must carry it alone, say 'A and B' under 'Feed'.");
        }
        return new BreakerPoles(poles, byVoltage == 0 ? poles : byVoltage, breakers);
    }
}
