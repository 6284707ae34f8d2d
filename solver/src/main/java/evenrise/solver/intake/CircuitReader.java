package evenrise.solver.intake;

import evenrise.solver.table.ReadTable;
import java.util.Optional;

/** Reads what a row says of its circuit and breaker. */
final class CircuitReader {
    private final CellReader cells;
    private final Notices notices;

    CircuitReader(CellReader cells, Notices notices) {
        this.cells = cells;
        this.notices = notices;
    }

    ListedCircuit of(ReadTable.Row row) {
        CircuitNames names = CellReader.isSilent(cells.cell(row, Meaning.CIRCUIT))
                ? CircuitNames.NONE
                : CircuitNames.of(cells.text(row, Meaning.CIRCUIT));
        return new ListedCircuit(names, breaker(row));
    }

    private Optional<StatedBreaker> breaker(ReadTable.Row row) {
        boolean isEmpty = cells.cell(row, Meaning.BREAKER).text().matches("[-–—]*");
        if (isEmpty || !cells.isReadable(row, Meaning.BREAKER)) {
            return Optional.empty();
        }
        String written = cells.text(row, Meaning.BREAKER);
        Optional<StatedBreaker> breaker = StatedBreaker.of(written);
        cells.read(
                row,
                Meaning.BREAKER,
                breaker.map(StatedBreaker::text).orElse("tells no rating"),
                breaker.isPresent() ? ReadValue.How.STATED : ReadValue.How.GUESSED);
        if (breaker.isEmpty()) {
            notices.assume("breaker '" + CellReader.cut(written)
                    + "' tells no rating such as 20/2, C16 or 16 A/3P: by what it carries");
        }
        return breaker;
    }
}
