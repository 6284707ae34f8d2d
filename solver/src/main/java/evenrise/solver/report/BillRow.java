package evenrise.solver.report;

import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A line of a bill, or its total.
 *
 * @param isTotal of all lines above that have a price; it has a sum alone
 */
public record BillRow(
        String item, OptionalInt quantity, OptionalDouble unitPrice, OptionalDouble sum, boolean isTotal) {
    /** Stands where a line has none. */
    public static final String NO_PRICE = "no price";

    /** Ends with the total where there is a price; it says so where it leaves lines out. */
    public static List<BillRow> of(BillOfMaterials bill) {
        List<BillRow> rows =
                new ArrayList<>(bill.lines().stream().map(BillRow::of).toList());
        if (bill.unpriced().size() < bill.lines().size()) {
            String words = bill.unpriced().isEmpty() ? "Total" : "Total of what has a price";
            rows.add(new BillRow(
                    words, OptionalInt.empty(), OptionalDouble.empty(), OptionalDouble.of(bill.total()), true));
        }
        return rows;
    }

    private static BillRow of(BillLine line) {
        return new BillRow(line.item(), OptionalInt.of(line.quantity()), line.unitPrice(), line.sum(), false);
    }
}
