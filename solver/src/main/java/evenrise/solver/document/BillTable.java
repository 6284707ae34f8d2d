package evenrise.solver.document;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.Project;
import evenrise.solver.document.Grid.Column;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** What to buy and what work to do. */
final class BillTable {
    private static final String NO_PRICE = "no price";

    private BillTable() {}

    /** Ends with the total where there is a price; it says so where it leaves lines out. */
    static Grid of(Project project) {
        BillOfMaterials bill = BillOfMaterials.of(project);
        List<List<Object>> rows = new ArrayList<>();
        bill.lines()
                .forEach(line ->
                        rows.add(List.of(line.item(), line.quantity(), cell(line.unitPrice()), cell(line.sum()))));
        if (bill.unpriced().size() < bill.lines().size()) {
            String total = bill.unpriced().isEmpty() ? "Total" : "Total of what has a price";
            rows.add(List.of(total, "", "", bill.total()));
        }
        String currency = bill.currency().orElse("");
        return new Grid(
                "bill",
                "Bill of materials",
                List.of(
                        Column.text("Item"),
                        Column.number("Quantity", ""),
                        Column.number("Price", currency),
                        Column.number("Sum", currency)),
                rows);
    }

    private static Object cell(OptionalDouble price) {
        return price.isPresent() ? (Object) price.getAsDouble() : NO_PRICE;
    }
}
