package evenrise.solver.intake;

import evenrise.model.check.Nearest;
import evenrise.model.intake.Columns;
import evenrise.solver.table.Cell;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * Which column of a sheet means what.
 *
 * @param row of the headers, as the sheet counts
 * @param units that stand in headers, lower case, by meaning
 * @param notices which columns were recognised, which are not read, and which the mapping names in vain
 */
record Header(int row, Map<Meaning, Integer> columns, Map<Meaning, String> units, List<Notice> notices) {
    /** Titles and addresses may stand above the headers. */
    private static final int LOOK_AT_ROWS = 40;

    /** A name, and something that tells the current, make a list. */
    private static final int FEWEST = 2;

    /** Empty where no row looks like headers. */
    static Optional<Header> of(ReadTable sheet, Columns mapped, OptionalInt row) {
        Optional<Header> best = Optional.empty();
        for (ReadTable.Row each : sheet.rows().stream().limit(LOOK_AT_ROWS).toList()) {
            if (row.isPresent() && each.number() != row.getAsInt()) {
                continue;
            }
            Header candidate = read(sheet, each, mapped);
            boolean isEnough = candidate.columns.size() >= FEWEST && candidate.columns.containsKey(Meaning.NAME);
            if (isEnough
                    && best.map(found -> found.columns.size() < candidate.columns.size())
                            .orElse(true)) {
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    /** Whether every column that the mapping names is there. */
    boolean hasAllMapped() {
        return notices.stream().noneMatch(notice -> notice.sort() == Notice.Kind.PROBLEM);
    }

    private static Header read(ReadTable sheet, ReadTable.Row row, Columns mapped) {
        Map<Meaning, Integer> columns = new EnumMap<>(Meaning.class);
        Map<Meaning, String> units = new EnumMap<>(Meaning.class);
        List<Notice> notices = new ArrayList<>();
        List<String> plain =
                row.cells().stream().map(cell -> HeaderWords.plain(cell.text())).toList();
        for (Meaning meaning : Meaning.values()) {
            int found = column(row, plain, meaning, mapped, columns);
            if (found < 0) {
                meaning.mapped(mapped).ifPresent(name -> notices.add(missing(sheet, row, meaning, name)));
                continue;
            }
            String header = row.cell(found).text();
            columns.put(meaning, found);
            unit(header, meaning).ifPresent(unit -> units.put(meaning, unit));
            if (meaning.mapped(mapped).isEmpty()) {
                notices.add(Notice.guess(
                        sheet,
                        row.number(),
                        column(found, header) + " is read as " + meaning.word()
                                + Optional.ofNullable(units.get(meaning))
                                        .map(unit -> " in " + unit)
                                        .orElse("")));
            }
        }
        for (int i = 0; i < row.cells().size(); i++) {
            if (!row.cell(i).isEmpty() && !columns.containsValue(i)) {
                notices.add(new Notice(
                        Notice.Kind.NOT_READ,
                        Notice.place(sheet, row.number()),
                        column(i, row.cell(i).text())));
            }
        }
        return new Header(row.number(), columns, units, notices);
    }

    private static String column(int index, String header) {
        return "column " + ReadTable.letters(index) + " '" + CellReader.cut(header) + "'";
    }

    private static Notice missing(ReadTable sheet, ReadTable.Row row, Meaning meaning, String name) {
        return Notice.problem(
                sheet,
                row.number(),
                "the mapping reads " + meaning.word() + " from a column '" + name + "', which is not there. "
                        + maybe(name, row) + "The headers are: " + headers(row) + ".");
    }

    private static String maybe(String name, ReadTable.Row row) {
        return Nearest.to(name, row.cells().stream().map(Cell::text).toList())
                .map(header -> "Maybe it is '" + CellReader.cut(header) + "'. ")
                .orElse("");
    }

    /** The headers of a row, as a person would name them. */
    private static String headers(ReadTable.Row row) {
        return row.cells().stream()
                .filter(cell -> !cell.isEmpty())
                .map(cell -> "'" + CellReader.cut(cell.text()) + "'")
                .collect(Collectors.joining(", "));
    }

    /** What a mapping names that no row of the sheet has, where no row can be taken for headers. */
    static Optional<Notice> unmatched(ReadTable sheet, Columns mapped, OptionalInt row) {
        Optional<ReadTable.Row> fullest = sheet.rows().stream()
                .limit(LOOK_AT_ROWS)
                .filter(each -> row.isEmpty() || each.number() == row.getAsInt())
                .max(Comparator.comparingLong(each ->
                        each.cells().stream().filter(cell -> !cell.isEmpty()).count()));
        return fullest.flatMap(each -> read(sheet, each, mapped).notices.stream()
                .filter(notice -> notice.sort() == Notice.Kind.PROBLEM)
                .findFirst());
    }

    private static int column(
            ReadTable.Row row, List<String> plain, Meaning meaning, Columns mapped, Map<Meaning, Integer> taken) {
        Optional<String> wanted = meaning.mapped(mapped);
        int best = -1;
        int bestMatch = 0;
        for (int i = 0; i < row.cells().size(); i++) {
            String header = row.cell(i).text();
            if (taken.containsValue(i)) {
                continue;
            }
            int match = wanted.isPresent()
                    ? wanted.get().strip().equalsIgnoreCase(header) ? 3 : 0
                    : match(meaning, header, plain.get(i));
            if (match > bestMatch) {
                best = i;
                bestMatch = match;
            }
        }
        return best;
    }

    /** A unit in the header says more than its words: a load in kW is a power, a power in kVA an apparent one. */
    private static int match(Meaning meaning, String header, String plain) {
        boolean isDraw = Meaning.DRAWS.contains(meaning) || meaning == Meaning.NAME;
        Optional<Meaning> measured = isDraw ? HeaderUnit.of(header).flatMap(HeaderUnit::measured) : Optional.empty();
        if (measured.isEmpty()) {
            return meaning.match(plain);
        }
        boolean saysDraw = HeaderUnit.saysDraw(HeaderUnit.without(header))
                || Meaning.DRAWS.stream().anyMatch(each -> each.match(plain) == 2);
        return saysDraw && meaning == measured.get() ? 2 : 0;
    }

    /** The unit in brackets, or that the header itself is. */
    private static Optional<String> unit(String header, Meaning meaning) {
        Optional<String> stated = HeaderUnit.of(header).map(HeaderUnit::unit);
        if (stated.isPresent()) {
            return stated;
        }
        String plain = HeaderWords.plain(header);
        return meaning.isAmount() && plain.matches("k?w|k?va|m?a|k?v") ? Optional.of(plain) : Optional.empty();
    }
}
