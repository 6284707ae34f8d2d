package evenrise.solver.exchange;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Words;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.CablePrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.CatalogueBuilder;
import evenrise.model.project.ContactorPrice;
import evenrise.model.project.FeederPrice;
import evenrise.model.project.LabourHours;
import evenrise.model.project.LabourHoursBuilder;
import evenrise.model.project.NodePrice;
import evenrise.model.project.PanelType;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.TransformerConnection;
import evenrise.model.project.TransformerPrice;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** Reads a table of prices, row by row; all problems are found in one pass. */
final class PriceTableReader {
    private static final String WORK = "pole, lead, lead between panels, board, panel, node or contactor";

    private final List<String> problems = new ArrayList<>();
    private final CatalogueBuilder catalogue = Catalogue.builder();
    private final LabourHoursBuilder hours = LabourHours.builder();
    private final Map<String, SharedCatalogue.BoardPrice> boards = new LinkedHashMap<>();
    private final List<PanelType> panels = new ArrayList<>();
    private final List<BreakerPrice> breakers = new ArrayList<>();
    private final List<TransformerPrice> transformers = new ArrayList<>();
    private final List<NodePrice> nodes = new ArrayList<>();
    private final List<FeederPrice> feeders = new ArrayList<>();
    private final List<ContactorPrice> contactors = new ArrayList<>();
    private final List<CablePrice> cables = new ArrayList<>();
    private final List<AddedPercentage> percentages = new ArrayList<>();
    private final List<String> exclusions = new ArrayList<>();
    private Optional<String> currency = Optional.empty();
    private Optional<String> source = Optional.empty();
    private Optional<String> hourNeededBy = Optional.empty();
    private boolean hasRate;
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
            case PANEL -> panels.add(panel(cells));
            case BOARD -> board(cells);
            case BREAKER ->
                breakers.add(BreakerPrice.builder()
                        .poles(cells.neededWhole(PriceColumn.POLES))
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .switched(cells.isYes(PriceColumn.SWITCHED))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case TRANSFORMER ->
                transformers.add(TransformerPrice.builder()
                        .connection(word(cells, PriceColumn.CONNECTION, TransformerConnection.values()))
                        .upToKva(cells.neededNumber(PriceColumn.UP_TO_KVA))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case NODE ->
                nodes.add(NodePrice.builder()
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case FEEDER ->
                feeders.add(FeederPrice.builder()
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .price(cells.price())
                        .pricePerMetre(cells.number(PriceColumn.PER_METRE, 0))
                        .priceBreaks(cells.breaks())
                        .build());
            case CONTACTOR ->
                contactors.add(ContactorPrice.builder()
                        .upToPoles(cells.neededWhole(PriceColumn.POLES))
                        .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                        .price(cells.price())
                        .priceBreaks(cells.breaks())
                        .build());
            case CABLE -> cables.add(cable(cells));
            case LEAD_BETWEEN_PANELS -> catalogue.leadBetweenPanels(cells.maybePrice());
            case WORK -> work(cells);
            case HOUR -> hour(cells);
            case PERCENTAGE ->
                percentages.add(AddedPercentage.builder()
                        .name(cells.needed(PriceColumn.NAME))
                        .percent(cells.percent())
                        .of(word(cells, PriceColumn.OF, PercentageBase.values()).orElseGet(() -> {
                            cells.needed(PriceColumn.OF);
                            return PercentageBase.MATERIAL_AND_LABOUR;
                        }))
                        .build());
        }
    }

    private static PanelType panel(PriceCells cells) {
        return PanelType.builder()
                .id(cells.needed(PriceColumn.NAME))
                .slots(cells.neededWhole(PriceColumn.SLOTS))
                .ratedAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                .neutralFactor(cells.number(PriceColumn.NEUTRAL, 1))
                .numbering(word(cells, PriceColumn.NUMBERING, SlotNumbering.values())
                        .orElse(SlotNumbering.ALTERNATING))
                .floorSquareMetres(cells.number(PriceColumn.FLOOR))
                .price(cells.price())
                .priceBreaks(cells.breaks())
                .build();
    }

    private void board(PriceCells cells) {
        String id = cells.needed(PriceColumn.NAME);
        if (boards.put(id, new SharedCatalogue.BoardPrice(cells.price(), cells.breaks())) != null) {
            cells.problem("a second price of board '" + id + "'.");
        }
    }

    private CablePrice cable(PriceCells cells) {
        double hoursPerMetre = cells.number(PriceColumn.HOURS, 0);
        needsRate(hoursPerMetre > 0, "cable");
        OptionalInt poles = cells.text(PriceColumn.POLES).isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(cells.neededWhole(PriceColumn.POLES));
        return CablePrice.builder()
                .poles(poles)
                .upToAmps(cells.neededNumber(PriceColumn.UP_TO_AMPS))
                .pricePerMetre(cells.neededNumber(PriceColumn.PER_METRE))
                .conduitPerMetre(cells.number(PriceColumn.CONDUIT, 0))
                .hoursPerMetre(hoursPerMetre)
                .build();
    }

    private void work(PriceCells cells) {
        OptionalDouble price = cells.maybePrice();
        OptionalDouble of = cells.number(PriceColumn.HOURS);
        String what = cells.needed(PriceColumn.NAME).toLowerCase(Locale.ROOT);
        needsRate(of.isPresent(), "work, " + what);
        switch (what) {
            case "pole" -> {
                catalogue.labourPerPole(price);
                hours.perPole(of);
            }
            case "lead" -> {
                catalogue.labourPerLead(price);
                hours.perLead(of);
            }
            case "lead between panels" -> {
                hours.perLeadBetweenPanels(of);
                if (price.isPresent()) {
                    cells.problem(
                            PriceColumn.PRICE, "has no place here: hours, or a row of the kind lead between panels");
                }
            }
            case "board" -> {
                catalogue.labourPerBoard(price);
                hours.perBoard(of);
            }
            case "panel" -> {
                catalogue.labourPerPanel(price);
                hours.perPanel(of);
            }
            case "node" -> {
                catalogue.labourPerNode(price);
                hours.perNode(of);
            }
            case "contactor" -> {
                catalogue.labourPerContactor(price);
                hours.perContactor(of);
            }
            default -> cells.problem(PriceColumn.NAME, "is '" + what + "', expected " + WORK);
        }
    }

    private void needsRate(boolean does, String what) {
        if (does && hourNeededBy.isEmpty()) {
            hourNeededBy = Optional.of(what);
        }
    }

    private void hour(PriceCells cells) {
        switch (cells.needed(PriceColumn.NAME).toLowerCase(Locale.ROOT)) {
            case "day" -> {
                hours.rate(cells.neededNumber(PriceColumn.PRICE));
                hasRate = true;
            }
            case "night" -> hours.nightRate(cells.number(PriceColumn.PRICE)).nightPercent(cells.percent());
            default -> cells.problem(PriceColumn.NAME, "is neither day nor night");
        }
    }

    private static <E extends Enum<E>> Optional<E> word(PriceCells cells, PriceColumn column, E[] values) {
        String text = cells.text(column).toLowerCase(Locale.ROOT);
        Optional<E> value =
                Stream.of(values).filter(each -> Words.word(each).equals(text)).findFirst();
        if (value.isEmpty() && !text.isEmpty()) {
            cells.problem(
                    column,
                    "is '" + text + "', expected "
                            + String.join(
                                    ", ", Stream.of(values).map(Words::word).toList()));
        }
        return value;
    }

    private SharedCatalogue.Read read(String name) {
        if (rows == 0 && problems.isEmpty()) {
            problems.add(
                    "no table of prices was found: a header row with 'kind', 'name', 'price' and others. Begin with"
                            + " 'evenrise catalogue --template FILE'.");
        } else if (currency.isEmpty()) {
            problems.add("no row of the kind currency.");
        }
        if (hourNeededBy.isPresent() && !hasRate) {
            problems.add(
                    "hours of " + hourNeededBy.get() + " need the price of an hour: a row of the kind hour, name day.");
        }
        if (!problems.isEmpty()) {
            return new SharedCatalogue.Read(Optional.empty(), List.copyOf(problems));
        }
        Catalogue read = catalogue
                .currency(currency.orElseThrow())
                .source(source.or(() -> Optional.of(name)))
                .panelTypes(panels)
                .breakers(breakers)
                .transformers(transformers)
                .nodes(nodes)
                .feeders(feeders)
                .contactors(contactors)
                .cables(cables)
                .percentages(percentages)
                .exclusions(exclusions.isEmpty() ? Optional.empty() : Optional.of(List.copyOf(exclusions)))
                .labourHours(hasRate ? Optional.of(hours.build()) : Optional.empty())
                .build();
        return new SharedCatalogue.Read(Optional.of(new SharedCatalogue(read, boards)), List.of());
    }
}
