package evenrise.solver.intake;

import evenrise.model.check.Nearest;
import evenrise.model.intake.Columns;
import evenrise.model.intake.SheetMapping;
import evenrise.solver.table.Cell;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Tells which column of one row of headers means what: by the mapping, by usual words, by its values where words are not enough. */
final class HeaderReader {
    /** So many rows below tell what a column holds. */
    private static final int JUDGED_ROWS = 500;

    private final ReadTable sheet;
    private final ReadTable.Row row;
    private final Columns mapped;
    private final List<String> plain;
    private final Set<Integer> ignored = new HashSet<>();
    private final Map<Integer, Meaning> judged = new HashMap<>();
    private final Map<Meaning, Integer> columns = new EnumMap<>(Meaning.class);
    private final Map<Meaning, String> units = new EnumMap<>(Meaning.class);
    private final List<Notice> notices = new ArrayList<>();

    private HeaderReader(ReadTable sheet, ReadTable.Row row, SheetMapping mapping) {
        this.sheet = sheet;
        this.row = row;
        this.mapped = mapping.columns().orElse(Columns.BY_THEIR_WORDS);
        this.plain =
                row.cells().stream().map(cell -> HeaderWords.plain(cell.text())).toList();
        for (int i = 0; i < plain.size(); i++) {
            String header = row.cell(i).text();
            if (mapping.ignore().stream().anyMatch(name -> name.strip().equalsIgnoreCase(header))) {
                ignored.add(i);
            }
        }
    }

    static Header read(ReadTable sheet, ReadTable.Row row, SheetMapping mapping) {
        return new HeaderReader(sheet, row, mapping).header();
    }

    private Header header() {
        // What a mapping names goes first, so that no word of another header takes its column.
        Stream.of(Meaning.values())
                .sorted(Comparator.comparing(meaning -> meaning.mapped(mapped).isEmpty()))
                .forEach(this::place);
        Optional<ReadTable.Row> unitsRow = UnitsRow.below(sheet, row);
        unitsRow.ifPresent(below -> {
            UnitsRow.addTo(units, columns, below);
            notices.add(Notice.guess(sheet, below.number(), "is read as the units of the columns"));
        });
        List<ReadColumn> read = new ArrayList<>();
        for (int i = 0; i < row.cells().size(); i++) {
            if (!row.cell(i).isEmpty()) {
                read.add(column(i));
            }
        }
        Map<Integer, Meaning> mixed = new HashMap<>();
        columns.forEach((meaning, column) -> {
            if (ColumnJudge.KINDS.contains(meaning) && isMixed(column, meaning)) {
                mixed.put(column, meaning);
                notices.add(Notice.guess(
                        sheet,
                        row.number(),
                        place(column)
                                + " holds several kinds of values; what is a voltage, a feed, a panel, a circuit or"
                                + " a breaker counts as that"));
            }
        });
        return new Header(
                row.number(),
                unitsRow.map(ReadTable.Row::number).orElse(row.number()),
                columns,
                units,
                mixed,
                read,
                notices);
    }

    private void place(Meaning meaning) {
        int found = best(meaning);
        if (found < 0) {
            meaning.mapped(mapped).ifPresent(name -> notices.add(missing(meaning, name)));
            return;
        }
        String header = row.cell(found).text();
        columns.put(meaning, found);
        unit(header, meaning).ifPresent(unit -> units.put(meaning, unit));
        if (meaning.mapped(mapped).isEmpty()) {
            notices.add(Notice.guess(
                    sheet,
                    row.number(),
                    place(found) + " is read as " + meaning.word()
                            + Optional.ofNullable(units.get(meaning))
                                    .map(unit -> " in " + unit)
                                    .orElse("")
                            + (judged.containsKey(found) ? ", as most of its values are" : "")));
        }
    }

    private ReadColumn column(int index) {
        Optional<Meaning> meaning = columns.entrySet().stream()
                .filter(each -> each.getValue() == index)
                .map(Map.Entry::getKey)
                .findFirst();
        ReadColumn.By by = meaning.isEmpty()
                ? ignored.contains(index) ? ReadColumn.By.IGNORED : ReadColumn.By.NOTHING
                : meaning.get().mapped(mapped).isPresent()
                        ? ReadColumn.By.MAPPING
                        : judged.containsKey(index) ? ReadColumn.By.VALUES : ReadColumn.By.HEADER;
        if (by == ReadColumn.By.NOTHING || by == ReadColumn.By.IGNORED) {
            notices.add(new Notice(
                    Notice.Kind.NOT_READ,
                    Notice.place(sheet, row.number()),
                    place(index) + (by == ReadColumn.By.IGNORED ? ", as was asked" : "")));
        }
        if (by == ReadColumn.By.NOTHING) {
            UnreadFigures.question(row.cell(index).text(), values(index))
                    .ifPresent(text -> notices.add(new Notice(
                            Notice.Kind.QUESTION, Notice.place(sheet, row.number()), place(index) + " " + text)));
        }
        return new ReadColumn(
                sheet.name(),
                ReadTable.letters(index),
                row.cell(index).text(),
                meaning.map(Meaning::key),
                meaning.map(units::get).orElse(""),
                by);
    }

    private String place(int index) {
        return "column " + ReadTable.letters(index) + " '"
                + CellReader.cut(row.cell(index).text()) + "'";
    }

    private int best(Meaning meaning) {
        Optional<String> wanted = meaning.mapped(mapped);
        int best = -1;
        int bestMatch = 0;
        for (int i = 0; i < row.cells().size(); i++) {
            String header = row.cell(i).text();
            if (columns.containsValue(i) || ignored.contains(i)) {
                continue;
            }
            int match = wanted.isPresent()
                    ? wanted.get().strip().equalsIgnoreCase(header) ? named(meaning, i) : 0
                    : match(meaning, header, i);
            if (match > bestMatch) {
                best = i;
                bestMatch = match;
            }
        }
        return best;
    }

    /** Of two columns with one header, that whose values are such. */
    private int named(Meaning meaning, int column) {
        return judged(column).filter(meaning::equals).isPresent() ? 4 : 3;
    }

    /** A unit in the header says more than its words: a load in kW is a power, a power in kVA an apparent one. */
    private int match(Meaning meaning, String header, int column) {
        Optional<Meaning> byValues = judged(column);
        if (byValues.isPresent()) {
            // A header that says it plainly goes before one that is judged.
            return byValues.get() == meaning ? 1 : 0;
        }
        boolean isDraw = Meaning.DRAWS.contains(meaning) || meaning == Meaning.NAME;
        Optional<Meaning> measured = isDraw ? HeaderUnit.of(header).flatMap(HeaderUnit::measured) : Optional.empty();
        if (measured.isEmpty()) {
            return meaning.match(plain.get(column));
        }
        boolean saysDraw = HeaderUnit.saysDraw(HeaderUnit.without(header))
                || Meaning.DRAWS.stream().anyMatch(each -> each.match(plain.get(column)) == 2);
        return saysDraw && meaning == measured.get() ? 2 : 0;
    }

    private Optional<Meaning> judged(int column) {
        if (!ColumnJudge.isOpen(plain.get(column))) {
            return Optional.empty();
        }
        if (!judged.containsKey(column)) {
            ColumnJudge.most(plain.get(column), values(column)).ifPresent(meaning -> judged.put(column, meaning));
        }
        return Optional.ofNullable(judged.get(column));
    }

    private List<String> values(int column) {
        return sheet.rows().stream()
                .filter(each -> each.number() > row.number())
                .limit(JUDGED_ROWS)
                .map(each -> each.cell(column).text())
                .toList();
    }

    private boolean isMixed(int column, Meaning meaning) {
        return ColumnJudge.isOpen(plain.get(column))
                && sheet.rows().stream()
                        .filter(each -> each.number() > row.number())
                        .map(each -> ColumnJudge.of(
                                plain.get(column), each.cell(column).text()))
                        .anyMatch(kind -> kind.isPresent() && kind.get() != meaning);
    }

    private Notice missing(Meaning meaning, String name) {
        return Notice.problem(
                sheet,
                row.number(),
                "the mapping reads " + meaning.word() + " from a column '" + name + "', which is not there. "
                        + maybe(name) + "The headers are: " + headers() + ".");
    }

    private String maybe(String name) {
        return Nearest.to(name, row.cells().stream().map(Cell::text).toList())
                .map(header -> "Maybe it is '" + CellReader.cut(header) + "'. ")
                .orElse("");
    }

    /** The headers of the row, as a person would name them. */
    private String headers() {
        return row.cells().stream()
                .filter(cell -> !cell.isEmpty())
                .map(cell -> "'" + CellReader.cut(cell.text()) + "'")
                .collect(Collectors.joining(", "));
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
