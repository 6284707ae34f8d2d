package evenrise.solver.exchange;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Words;
import evenrise.model.plan.Cautions;
import evenrise.model.project.BoardType;
import evenrise.model.project.Catalogue;
import evenrise.model.project.LabourHours;
import evenrise.solver.table.Csv;
import evenrise.solver.table.SteadyZip;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** A catalogue as one table, a row for each price, to be kept beside many projects and taken in by any of them. */
public final class PriceTable {
    /** Begins the kind of a row that only shows how it is filled in. */
    static final String EXAMPLE = "example ";

    private static final String FILL = "E6ECEF";
    private static final int WIDEST = 44;

    private final List<PriceRow> rows = new ArrayList<>();

    private PriceTable() {}

    /** @param boards whose own prices stand with the catalogue's */
    public static PriceTable of(Catalogue catalogue, List<BoardType> boards) {
        PriceTable table = new PriceTable();
        table.rows.add(PriceRow.of(PricedKind.CURRENCY).with(PriceColumn.NAME, catalogue.currency()));
        catalogue
                .source()
                .ifPresent(
                        source -> table.rows.add(PriceRow.of(PricedKind.SOURCE).with(PriceColumn.NAME, source)));
        table.things(catalogue, boards);
        table.plant(catalogue);
        table.work(catalogue);
        catalogue
                .percentages()
                .forEach(each -> table.rows.add(PriceRow.of(PricedKind.PERCENTAGE)
                        .with(PriceColumn.NAME, each.name())
                        .with(PriceColumn.PERCENT, each.percent())
                        .with(PriceColumn.OF, Words.word(each.of()))));
        catalogue
                .exclusions()
                .orElse(List.of())
                .forEach(
                        each -> table.rows.add(PriceRow.of(PricedKind.EXCLUSION).with(PriceColumn.NAME, each)));
        return table;
    }

    /** A row of each kind that shows how it is filled in, and counts for nothing. */
    public static PriceTable template() {
        PriceTable table = of(ExamplePrices.catalogue(), ExamplePrices.boards());
        table.rows.forEach(row -> row.with(PriceColumn.KIND, EXAMPLE + row.text(PriceColumn.KIND)));
        return table;
    }

    private void things(Catalogue catalogue, List<BoardType> boards) {
        catalogue
                .panelTypes()
                .forEach(each -> rows.add(PriceRow.of(PricedKind.PANEL)
                        .with(PriceColumn.NAME, each.id())
                        .with(PriceColumn.SLOTS, (double) each.slots())
                        .with(PriceColumn.UP_TO_AMPS, each.ratedAmps())
                        .with(PriceColumn.NEUTRAL, each.neutralFactor())
                        .with(PriceColumn.NUMBERING, Words.word(each.numbering()))
                        .with(PriceColumn.FLOOR, each.floorSquareMetres())
                        .priced(each.price(), each.priceBreaks())));
        boards.forEach(each -> rows.add(PriceRow.of(PricedKind.BOARD)
                .with(PriceColumn.NAME, each.id())
                .priced(each.price(), each.priceBreaks())));
        catalogue
                .breakers()
                .forEach(each -> rows.add(PriceRow.of(PricedKind.BREAKER)
                        .with(PriceColumn.POLES, (double) each.poles())
                        .with(PriceColumn.UP_TO_AMPS, each.upToAmps())
                        .with(PriceColumn.SWITCHED, each.switched() ? "yes" : "no")
                        .priced(each.price(), each.priceBreaks())));
        catalogue
                .cables()
                .forEach(each -> rows.add(PriceRow.of(PricedKind.CABLE)
                        .with(PriceColumn.POLES, each.poles())
                        .with(PriceColumn.UP_TO_AMPS, each.upToAmps())
                        .with(PriceColumn.PER_METRE, each.pricePerMetre())
                        .with(PriceColumn.CONDUIT, each.conduitPerMetre())
                        .with(PriceColumn.HOURS, each.hoursPerMetre())));
        catalogue
                .leadBetweenPanels()
                .ifPresent(price ->
                        rows.add(PriceRow.of(PricedKind.LEAD_BETWEEN_PANELS).with(PriceColumn.PRICE, price)));
    }

    private void plant(Catalogue catalogue) {
        catalogue.transformers().forEach(each -> {
            PriceRow row = PriceRow.of(PricedKind.TRANSFORMER).with(PriceColumn.UP_TO_KVA, each.upToKva());
            each.connection().ifPresent(it -> row.with(PriceColumn.CONNECTION, Words.word(it)));
            rows.add(row.priced(each.price(), each.priceBreaks()));
        });
        catalogue
                .nodes()
                .forEach(each -> rows.add(PriceRow.of(PricedKind.NODE)
                        .with(PriceColumn.UP_TO_AMPS, each.upToAmps())
                        .priced(each.price(), each.priceBreaks())));
        catalogue
                .feeders()
                .forEach(each -> rows.add(PriceRow.of(PricedKind.FEEDER)
                        .with(PriceColumn.UP_TO_AMPS, each.upToAmps())
                        .with(PriceColumn.PER_METRE, each.pricePerMetre())
                        .priced(each.price(), each.priceBreaks())));
        catalogue
                .contactors()
                .forEach(each -> rows.add(PriceRow.of(PricedKind.CONTACTOR)
                        .with(PriceColumn.POLES, (double) each.upToPoles())
                        .with(PriceColumn.UP_TO_AMPS, each.upToAmps())
                        .priced(each.price(), each.priceBreaks())));
    }

    private void work(Catalogue catalogue) {
        LabourHours none = LabourHours.builder().rate(1).build();
        LabourHours hours = catalogue.labourHours().orElse(none);
        catalogue.labourHours().ifPresent(it -> {
            rows.add(PriceRow.of(PricedKind.HOUR).with(PriceColumn.NAME, "day").with(PriceColumn.PRICE, it.rate()));
            if (it.nightRate().isPresent() || it.nightPercent() > 0) {
                rows.add(PriceRow.of(PricedKind.HOUR)
                        .with(PriceColumn.NAME, "night")
                        .with(PriceColumn.PRICE, it.nightRate())
                        .with(PriceColumn.PERCENT, it.nightPercent()));
            }
        });
        work("pole", catalogue.labourPerPole(), hours.perPole());
        work("lead", catalogue.labourPerLead(), hours.perLead());
        work("lead between panels", OptionalDouble.empty(), hours.perLeadBetweenPanels());
        work("board", catalogue.labourPerBoard(), hours.perBoard());
        work("panel", catalogue.labourPerPanel(), hours.perPanel());
        work("node", catalogue.labourPerNode(), hours.perNode());
        work("contactor", catalogue.labourPerContactor(), hours.perContactor());
    }

    private void work(String what, OptionalDouble price, OptionalDouble hours) {
        if (price.isPresent() || hours.isPresent()) {
            rows.add(PriceRow.of(PricedKind.WORK)
                    .with(PriceColumn.NAME, what)
                    .with(PriceColumn.PRICE, price)
                    .with(PriceColumn.HOURS, hours));
        }
    }

    /** As CSV, UTF-8. */
    public byte[] csv() {
        List<List<String>> texts = new ArrayList<>();
        texts.add(Stream.of(PriceColumn.values()).map(PriceColumn::header).toList());
        rows.forEach(
                row -> texts.add(Stream.of(PriceColumn.values()).map(row::text).toList()));
        return Csv.of(texts).getBytes(StandardCharsets.UTF_8);
    }

    /** The same bytes for the same prices. */
    public byte[] workbook() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "evenrise", null)) {
            prices(workbook.newWorksheet("prices"));
            how(workbook.newWorksheet("how"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return SteadyZip.ofWorkbook(bytes.toByteArray());
    }

    private void prices(Worksheet sheet) {
        for (PriceColumn column : PriceColumn.values()) {
            int at = column.ordinal();
            int widest = column.header().length();
            sheet.value(0, at, column.header());
            sheet.style(0, at).bold().fillColor(FILL).set();
            for (int row = 0; row < rows.size(); row++) {
                Object cell = rows.get(row).cells().getOrDefault(column, "");
                widest = Math.max(widest, rows.get(row).text(column).length());
                if (cell instanceof Double number) {
                    sheet.value(row + 1, at, number);
                } else if (!cell.toString().isEmpty()) {
                    sheet.value(row + 1, at, Harmless.shown(cell.toString()));
                }
            }
            sheet.width(at, Math.min(WIDEST, widest + 2));
        }
        sheet.freezePane(1, 1);
    }

    private static void how(Worksheet sheet) {
        int row = 0;
        for (PricedKind kind : PricedKind.values()) {
            sheet.value(row, 0, kind.word());
            sheet.style(row, 0).bold().set();
            sheet.value(row, 1, kind.meaning());
            sheet.value(
                    row++,
                    2,
                    String.join(
                            ", ",
                            kind.columns().stream().map(PriceColumn::header).toList()));
        }
        row++;
        for (PriceColumn column : PriceColumn.values()) {
            sheet.value(row, 0, column.header());
            sheet.style(row, 0).bold().set();
            sheet.value(row++, 1, column.meaning());
        }
        row++;
        sheet.value(row++, 0, "Rows whose kind begins with 'example' count for nothing. Other columns are yours.");
        for (String line : Cautions.comments()) {
            sheet.value(row++, 0, line);
        }
        sheet.width(0, 20);
        sheet.width(1, 90);
        sheet.width(2, 70);
    }
}
