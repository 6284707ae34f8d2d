package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.AddedPercentage;
import evenrise.solver.report.BillRow;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What to buy and what work to do. */
public final class BillTable {
    private BillTable() {}

    public static DocumentTable<BillRow> of(BillOfMaterials bill) {
        String currency = bill.currency().orElse("");
        List<BillRow> rows = BillRow.of(bill);
        return DocumentTable.of(
                        "bill",
                        "Bill of materials",
                        String.join(" ", bill.basisSentences()),
                        List.of(
                                Column.text("item", "Item", BillRow::item),
                                new Column<>("quantity", "Quantity", "", true, BillTable::quantity),
                                new Column<>("price", "Price", currency, true, BillTable::price),
                                new Column<BillRow>("sum", "Sum", currency, true, row -> number(row.sum()))
                                        .calculated(row -> formula(rows, row))),
                        rows)
                .with(List.of(Column.text(
                        "kind",
                        "Kind",
                        row -> row.isTotal() ? "" : row.kind().map(Words::word).orElse(""))));
    }

    /** To the cent, as the rows are. A price that is written where there was none counts, too. */
    private static String formula(List<BillRow> rows, BillRow row) {
        if (!row.isTotal()) {
            return "IF(ISNUMBER([price]),ROUND([quantity]*[price],2),\"" + BillRow.NO_PRICE + "\")";
        }
        if (row.kind().isPresent()) {
            return "SUMIF([kind:above],\"" + Words.word(row.kind().get()) + "\",[sum:above])";
        }
        int at = IntStream.range(0, rows.size())
                .filter(i -> rows.get(i) == row)
                .findFirst()
                .orElseThrow();
        int material = (int) rows.stream().filter(each -> !each.isTotal()).count();
        String above = "SUM([sum@" + material + "]:[sum@" + (at - 1) + "])";
        return row.percentage()
                .map(each -> "ROUND(" + base(each, material, above) + "*" + each.percent() + "/100,2)")
                .orElse(above);
    }

    private static String base(AddedPercentage percentage, int material, String above) {
        String labour = "[sum@" + (material + 1) + "]";
        return switch (percentage.of()) {
            case MATERIAL -> "[sum@" + material + "]";
            case LABOUR -> labour;
            case MATERIAL_AND_LABOUR -> "([sum@" + material + "]+" + labour + ")";
            case ALL_ABOVE -> above;
        };
    }

    /** Things are whole, metres are not. */
    private static Object quantity(BillRow row) {
        return row.quantity()
                .map(each ->
                        each.stripTrailingZeros().scale() <= 0 ? (Object) each.intValue() : (Object) each.doubleValue())
                .orElse("");
    }

    private static Object price(BillRow row) {
        return row.isTotal() ? "" : number(row.unitPrice());
    }

    private static Object number(Optional<BigDecimal> amount) {
        return amount.map(each -> (Object) each.doubleValue()).orElse(BillRow.NO_PRICE);
    }
}
