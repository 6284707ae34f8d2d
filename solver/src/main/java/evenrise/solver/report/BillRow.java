package evenrise.solver.report;

import evenrise.model.contract.Words;
import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.estimate.CostKind;
import evenrise.model.estimate.PriceBuildUp;
import evenrise.model.project.AddedPercentage;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A line of a bill, or what its lines come to.
 *
 * @param kind of a line, and of the subtotal of its kind; empty else
 * @param percentage whose amount it is; empty else
 * @param isTotal of lines above that have a price: a subtotal, a percentage or the total; it has a sum alone
 */
public record BillRow(
        String item,
        Optional<BigDecimal> quantity,
        Optional<BigDecimal> unitPrice,
        Optional<BigDecimal> sum,
        Optional<CostKind> kind,
        Optional<AddedPercentage> percentage,
        boolean isTotal) {
    /** Stands where a line has none. */
    public static final String NO_PRICE = "no price";

    /** Ends with subtotals, percentages and the total where there is a price; it says so where it leaves lines out. */
    public static List<BillRow> of(BillOfMaterials bill) {
        List<BillRow> rows =
                new ArrayList<>(bill.lines().stream().map(BillRow::of).toList());
        if (bill.unpriced().size() < bill.lines().size()) {
            PriceBuildUp buildUp = bill.buildUp();
            rows.add(subtotal("Material", buildUp.material(), CostKind.MATERIAL));
            rows.add(subtotal("Labour" + hours(bill), buildUp.labour(), CostKind.LABOUR));
            buildUp.added()
                    .forEach(each -> rows.add(new BillRow(
                            words(each.percentage()),
                            Optional.empty(),
                            Optional.empty(),
                            Optional.of(each.amount()),
                            Optional.empty(),
                            Optional.of(each.percentage()),
                            true)));
            rows.add(total(bill.unpriced().isEmpty() ? "Total" : "Total of what has a price", buildUp.total()));
        }
        return rows;
    }

    /** Subtotals and percentages in one sentence. */
    static String sentence(BillOfMaterials bill) {
        PriceBuildUp buildUp = bill.buildUp();
        List<String> parts = new ArrayList<>();
        parts.add("material " + buildUp.material().toPlainString());
        parts.add("labour " + buildUp.labour().toPlainString() + hours(bill).replaceFirst(", (.*)", " ($1)"));
        buildUp.added()
                .forEach(each ->
                        parts.add(words(each.percentage()) + " " + each.amount().toPlainString()));
        return String.join("; ", parts);
    }

    private static String hours(BillOfMaterials bill) {
        return bill.hours().signum() == 0 ? "" : ", " + plain(bill.hours()) + " hours";
    }

    private static String words(AddedPercentage each) {
        String base = Words.word(each.of()).replace('-', ' ');
        return each.name() + ", " + plain(BigDecimal.valueOf(each.percent())) + " % of " + base;
    }

    /** As it is written by hand: 12 or 12.5. */
    static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }

    private static BillRow subtotal(String words, BigDecimal sum, CostKind kind) {
        return new BillRow(
                words, Optional.empty(), Optional.empty(), Optional.of(sum), Optional.of(kind), Optional.empty(), true);
    }

    private static BillRow total(String words, BigDecimal sum) {
        return new BillRow(
                words, Optional.empty(), Optional.empty(), Optional.of(sum), Optional.empty(), Optional.empty(), true);
    }

    private static BillRow of(BillLine line) {
        return new BillRow(
                line.item(),
                Optional.of(line.quantity()),
                line.unitPrice(),
                line.sum(),
                Optional.of(line.kind()),
                Optional.empty(),
                false);
    }
}
