package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.plan.Cautions;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

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
                    row.quantity().map(BillRow::plain).orElse(""),
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

    /** To the cent, or as fine as it is stated. */
    private static String money(Optional<BigDecimal> amount) {
        return amount.map(each -> each.setScale(
                                Math.max(2, each.stripTrailingZeros().scale()), RoundingMode.UNNECESSARY)
                        .toPlainString())
                .orElse(BillRow.NO_PRICE);
    }
}
