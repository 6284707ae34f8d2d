package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.plan.Cautions;
import java.util.List;
import java.util.OptionalDouble;

/** A bill of materials, for a screen. */
public final class BillText {
    private BillText() {}

    public static List<String> lines(String project, BillOfMaterials bill, Paint paint) {
        String currency = bill.currency().orElse("no currency stated");
        Table table =
                new Table().text("Item").number("Quantity").number("Price").number("Sum");
        for (BillRow row : BillRow.of(bill)) {
            table.row(
                    row.item(),
                    row.isTotal() ? "" : Integer.toString(row.quantity().getAsInt()),
                    row.isTotal() ? "" : money(row.unitPrice()),
                    money(row.sum()));
        }
        Section section = new Section(paint, "Bill of materials for " + project + ", in " + currency).table(table);
        if (!bill.unpriced().isEmpty()) {
            section.text(
                    Phrase.counted(bill.unpriced().size(), "line") + " without a price: state it in the catalogue.");
        }
        bill.basisSentences().forEach(section::text);
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }

    private static String money(OptionalDouble amount) {
        return amount.isPresent() ? Decimals.fixed(amount.getAsDouble(), 2) : BillRow.NO_PRICE;
    }
}
