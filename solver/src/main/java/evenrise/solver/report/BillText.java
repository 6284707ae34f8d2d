package evenrise.solver.report;

import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.plan.Cautions;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A bill of materials, for a screen and as a table of values. */
public final class BillText {
    private BillText() {}

    public static List<String> lines(String project, BillOfMaterials bill, Paint paint) {
        String currency = bill.currency().orElse("no currency stated");
        Table table =
                new Table().text("Item").number("Quantity").number("Price").number("Sum");
        bill.lines()
                .forEach(line -> table.row(
                        line.item(), Integer.toString(line.quantity()), money(line.unitPrice()), money(line.sum())));
        table.row("total of what has a price", "", "", money(OptionalDouble.of(bill.total())));
        Section section = new Section(paint, "Bill of materials for " + project + ", in " + currency).table(table);
        if (!bill.unpriced().isEmpty()) {
            section.text(
                    Numbers.counted(bill.unpriced().size(), "line") + " without a price: state it in the catalogue.");
        }
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }

    /** Header first; an empty price where there is none. */
    public static List<List<String>> values(BillOfMaterials bill) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("item", "quantity", "unit_price", "sum", "currency"));
        for (BillLine line : bill.lines()) {
            rows.add(List.of(
                    line.item(),
                    Integer.toString(line.quantity()),
                    plain(line.unitPrice()),
                    plain(line.sum()),
                    bill.currency().orElse("")));
        }
        return rows;
    }

    private static String money(OptionalDouble amount) {
        return amount.isPresent() ? String.format(Locale.ROOT, "%.2f", amount.getAsDouble()) : "no price";
    }

    private static String plain(OptionalDouble amount) {
        return amount.isPresent() ? String.format(Locale.ROOT, "%.2f", amount.getAsDouble()) : "";
    }
}
