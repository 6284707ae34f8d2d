package evenrise.solver.intake;

import evenrise.model.intake.SheetMapping;
import evenrise.solver.table.ReadTable;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which column of a sheet means what.
 *
 * @param row of the headers, as the sheet counts
 * @param lastRow of the headers, that below with their units where there is one
 * @param units that stand in headers, lower case, by meaning
 * @param mixed columns whose header may mean several things and whose values do, with what most of them are
 * @param read how each column was read, in order
 * @param notices which columns were recognised, which are not read, and which the mapping names in vain
 */
record Header(
        int row,
        int lastRow,
        Map<Meaning, Integer> columns,
        Map<Meaning, String> units,
        Map<Integer, Meaning> mixed,
        List<ReadColumn> read,
        List<Notice> notices) {
    /** Titles and addresses may stand above the headers. */
    private static final int LOOK_AT_ROWS = 40;

    /** A name, and something that tells the current, make a list. */
    private static final int FEWEST = 2;

    /** Empty where no row looks like headers. */
    static Optional<Header> of(ReadTable sheet, SheetMapping mapping) {
        Optional<Header> best = Optional.empty();
        for (ReadTable.Row each : candidates(sheet, mapping)) {
            Header candidate = HeaderReader.read(sheet, each, mapping);
            boolean isEnough = candidate.columns.size() >= FEWEST && candidate.columns.containsKey(Meaning.NAME);
            if (isEnough
                    && best.map(found -> found.columns.size() < candidate.columns.size())
                            .orElse(true)) {
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    private static List<ReadTable.Row> candidates(ReadTable sheet, SheetMapping mapping) {
        return sheet.rows().stream()
                .limit(mapping.headerRow().isPresent() ? Long.MAX_VALUE : LOOK_AT_ROWS)
                .filter(each -> mapping.headerRow().isEmpty()
                        || each.number() == mapping.headerRow().getAsInt())
                .toList();
    }

    /** Whether every column that the mapping names is there. */
    boolean hasAllMapped() {
        return notices.stream().noneMatch(notice -> notice.sort() == Notice.Kind.PROBLEM);
    }

    /** What a mapping names that no row of the sheet has, where no row can be taken for headers. */
    static Optional<Notice> unmatched(ReadTable sheet, SheetMapping mapping) {
        Optional<ReadTable.Row> fullest = candidates(sheet, mapping).stream()
                .max(Comparator.comparingLong(each ->
                        each.cells().stream().filter(cell -> !cell.isEmpty()).count()));
        return fullest.flatMap(each -> HeaderReader.read(sheet, each, mapping).notices.stream()
                .filter(notice -> notice.sort() == Notice.Kind.PROBLEM)
                .findFirst());
    }
}
