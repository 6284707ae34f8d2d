package evenrise.solver.exchange;

import evenrise.model.check.Nearest;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Catalogue;
import evenrise.model.project.CatalogueBuilder;
import evenrise.model.project.PercentageBase;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a table of prices, row by row; all problems are found in one pass. */
final class PriceTableReader {
    private final List<String> problems = new ArrayList<>();
    private final CatalogueBuilder catalogue = Catalogue.builder();
    private final PricedWork work = new PricedWork(catalogue);
    private final PricedThings things = new PricedThings(work::needsRate);
    private final Map<String, SharedCatalogue.BoardPrice> boards = new LinkedHashMap<>();
    private final List<AddedPercentage> percentages = new ArrayList<>();
    private final List<String> exclusions = new ArrayList<>();
    private Optional<String> currency = Optional.empty();
    private Optional<String> source = Optional.empty();
    private int rows;

    /** @param name of the file, printed as the source of prices where the table states none */
    static SharedCatalogue.Read read(List<ReadTable> sheets, String name) {
        PriceTableReader reader = new PriceTableReader();
        sheets.forEach(reader::sheet);
        return reader.read(name);
    }

    private void sheet(ReadTable sheet) {
        for (int i = 0; i < sheet.rows().size(); i++) {
            Map<PriceColumn, Integer> columns = columns(sheet.rows().get(i));
            if (columns.containsKey(PriceColumn.KIND) && columns.size() > 2) {
                boolean isCommaDecimal = sheet.hasDecimalComma(columns.entrySet().stream()
                        .filter(each -> each.getKey() != PriceColumn.NAME && each.getKey() != PriceColumn.BREAKS)
                        .map(Map.Entry::getValue)
                        .toList());
                sheet.rows()
                        .subList(i + 1, sheet.rows().size())
                        .forEach(row -> row(sheet, row, columns, isCommaDecimal));
                return;
            }
        }
    }

    private static Map<PriceColumn, Integer> columns(ReadTable.Row row) {
        Map<PriceColumn, Integer> columns = new EnumMap<>(PriceColumn.class);
        for (int i = 0; i < row.cells().size(); i++) {
            int at = i;
            PriceColumn.of(row.cell(i).text()).ifPresent(column -> columns.putIfAbsent(column, at));
        }
        return columns;
    }

    private void row(ReadTable sheet, ReadTable.Row row, Map<PriceColumn, Integer> columns, boolean isCommaDecimal) {
        String place = (sheet.name().isEmpty() ? "" : "sheet '" + sheet.name() + "', ") + "row " + row.number();
        PriceCells cells = new PriceCells(row, columns, place, isCommaDecimal, problems::add);
        String word = cells.text(PriceColumn.KIND).toLowerCase(Locale.ROOT);
        if (word.startsWith(PriceTable.EXAMPLE)) {
            return;
        }
        Optional<PricedKind> kind = PricedKind.of(word);
        if (kind.isEmpty()) {
            List<String> words =
                    Stream.of(PricedKind.values()).map(PricedKind::word).toList();
            cells.problem(
                    PriceColumn.KIND,
                    "is '" + word + "', expected one of " + String.join(", ", words)
                            + Nearest.to(word, words)
                                    .map(near -> "; maybe " + near)
                                    .orElse(""));
            return;
        }
        rows++;
        try {
            take(kind.get(), cells);
        } catch (IllegalArgumentException e) {
            cells.problem(e.getMessage() + ".");
        }
    }

    private void take(PricedKind kind, PriceCells cells) {
        switch (kind) {
            case CURRENCY -> currency = Optional.of(cells.needed(PriceColumn.NAME));
            case SOURCE -> source = Optional.of(cells.needed(PriceColumn.NAME));
            case EXCLUSION -> exclusions.add(cells.needed(PriceColumn.NAME));
            case PANEL, BREAKER, TRANSFORMER, NODE, FEEDER, CONTACTOR, CABLE -> things.take(kind, cells);
            case BOARD -> board(cells);
            case LEAD_BETWEEN_PANELS -> catalogue.leadBetweenPanels(cells.maybePrice());
            case WORK -> work.take(cells);
            case HOUR -> work.hour(cells);
            case PERCENTAGE ->
                percentages.add(AddedPercentage.builder()
                        .name(cells.needed(PriceColumn.NAME))
                        .percent(cells.percent())
                        .of(cells.word(PriceColumn.OF, PercentageBase.values()).orElseGet(() -> {
                            cells.needed(PriceColumn.OF);
                            return PercentageBase.MATERIAL_AND_LABOUR;
                        }))
                        .build());
        }
    }

    private void board(PriceCells cells) {
        String id = cells.needed(PriceColumn.NAME);
        if (boards.put(id, new SharedCatalogue.BoardPrice(cells.price(), cells.breaks())) != null) {
            cells.problem("a second price of board '" + id + "'.");
        }
    }

    private SharedCatalogue.Read read(String name) {
        if (rows == 0 && problems.isEmpty()) {
            problems.add(
                    "no table of prices was found: a header row with 'kind', 'name', 'price' and others. Begin with"
                            + " 'evenrise catalogue --template FILE'.");
        } else if (currency.isEmpty()) {
            problems.add("no row of the kind currency.");
        }
        work.lacksRate().ifPresent(problems::add);
        if (!problems.isEmpty()) {
            return new SharedCatalogue.Read(Optional.empty(), List.copyOf(problems));
        }
        things.into(catalogue);
        Catalogue read = catalogue
                .currency(currency.orElseThrow())
                .source(source.or(() -> Optional.of(name)))
                .percentages(percentages)
                .exclusions(exclusions.isEmpty() ? Optional.empty() : Optional.of(List.copyOf(exclusions)))
                .labourHours(work.hours())
                .build();
        return new SharedCatalogue.Read(Optional.of(new SharedCatalogue(read, boards)), List.of());
    }
}
