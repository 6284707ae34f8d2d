package evenrise.solver.intake;

import evenrise.model.intake.CellReading;
import evenrise.solver.table.Cell;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/** The cell of a row that holds something, where columns are mixed by what it is itself, and as a mapping corrects it. */
final class CorrectedCells {
    private final Header header;
    private final Map<Meaning, List<CellReading>> readings = new EnumMap<>(Meaning.class);
    private final Map<Integer, String> mixedHeaders;

    CorrectedCells(ReadTable sheet, Header header, List<CellReading> readings) {
        this.header = header;
        for (Meaning meaning : Meaning.values()) {
            List<CellReading> own = readings.stream()
                    .filter(each -> each.of().equals(meaning.key()))
                    .sorted(Comparator.comparing(each -> each.name().isEmpty()))
                    .toList();
            if (!own.isEmpty()) {
                this.readings.put(meaning, own);
            }
        }
        Optional<ReadTable.Row> headers = sheet.rows().stream()
                .filter(row -> row.number() == header.row())
                .findFirst();
        this.mixedHeaders = header.mixed().keySet().stream()
                .collect(Collectors.toMap(
                        column -> column,
                        column -> headers.map(row ->
                                        HeaderWords.plain(row.cell(column).text()))
                                .orElse("")));
    }

    /** As it is to be read. */
    Cell read(ReadTable.Row row, Meaning meaning) {
        Cell cell = written(row, meaning);
        List<CellReading> own = readings.get(meaning);
        if (own == null) {
            return cell;
        }
        // A name may be corrected itself; what is about pieces goes by the name that the list has.
        String name = written(row, Meaning.NAME).text();
        return own.stream()
                .filter(each -> each.written().strip().equals(cell.text())
                        && each.name().map(it -> it.strip().equals(name)).orElse(true))
                .findFirst()
                .filter(each -> !each.reads().strip().equals(cell.text()))
                .map(each -> Cell.text(each.reads()))
                .orElse(cell);
    }

    /** As the list has it. */
    Cell written(ReadTable.Row row, Meaning meaning) {
        Integer column = header.columns().get(meaning);
        Cell own = column == null ? Cell.EMPTY : row.cell(column);
        if (header.mixed().containsKey(column) && isAnother(row, column, own, meaning)) {
            own = Cell.EMPTY;
        }
        if (own.isEmpty()) {
            own = mixed(row, meaning);
        }
        return own.isEmpty() && meaning == Meaning.VOLTS ? besideDraw(row) : own;
    }

    /** Some lists have a voltage beside a power, in one cell. */
    private Cell besideDraw(ReadTable.Row row) {
        return Meaning.DRAWS.stream()
                .map(header.columns()::get)
                .filter(Objects::nonNull)
                .map(column -> FigureInWords.volts(row.cell(column).text()))
                .filter(volts -> !volts.isEmpty())
                .findFirst()
                .map(Cell::text)
                .orElse(Cell.EMPTY);
    }

    private Cell mixed(ReadTable.Row row, Meaning meaning) {
        for (Map.Entry<Integer, Meaning> each : header.mixed().entrySet()) {
            Cell mixed = row.cell(each.getKey());
            if (each.getValue() != meaning
                    && kind(each.getKey(), mixed).filter(meaning::equals).isPresent()) {
                return mixed;
            }
        }
        return Cell.EMPTY;
    }

    /** Whether a value counts as another than its column: not where the row has that already. */
    private boolean isAnother(ReadTable.Row row, int column, Cell cell, Meaning meaning) {
        return kind(column, cell)
                .filter(kind -> kind != meaning)
                .filter(kind -> Optional.ofNullable(header.columns().get(kind))
                        .map(other -> row.cell(other).isEmpty())
                        .orElse(true))
                .isPresent();
    }

    private Optional<Meaning> kind(int column, Cell cell) {
        return ColumnJudge.of(mixedHeaders.get(column), cell.text());
    }
}
