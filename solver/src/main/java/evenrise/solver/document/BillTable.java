package evenrise.solver.document;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.solver.report.BillRow;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** What to buy and what work to do. */
public final class BillTable {
    private BillTable() {}

    public static DocumentTable<BillRow> of(BillOfMaterials bill) {
        String currency = bill.currency().orElse("");
        return DocumentTable.of(
                "bill",
                "Bill of materials",
                String.join(" ", bill.basisSentences()),
                List.of(
                        Column.text("item", "Item", BillRow::item),
                        new Column<>("quantity", "Quantity", "", true, BillTable::quantity),
                        new Column<>("price", "Price", currency, true, BillTable::price),
                        new Column<>("sum", "Sum", currency, true, row -> number(row.sum()))),
                BillRow.of(bill));
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
