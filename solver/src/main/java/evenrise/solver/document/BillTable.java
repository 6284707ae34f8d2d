package evenrise.solver.document;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.solver.report.BillRow;
import java.util.List;

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
                        Column.countOrNone("quantity", "Quantity", BillRow::quantity),
                        new Column<>("price", "Price", currency, true, BillTable::price),
                        Column.number("sum", "Sum", currency, BillRow::sum, BillRow.NO_PRICE)),
                BillRow.of(bill));
    }

    private static Object price(BillRow row) {
        if (row.unitPrice().isPresent()) {
            return row.unitPrice().getAsDouble();
        }
        return row.isTotal() ? "" : BillRow.NO_PRICE;
    }
}
