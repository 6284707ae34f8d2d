package evenrise.solver.app;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.solver.report.BillText;
import java.util.List;

/**
 * What a project consists of, with prices.
 *
 * @since 0.1.0
 */
public record BillResult(String project, BillOfMaterials bill) implements Listing {
    @Override
    public List<String> text(TextStyle style) {
        return BillText.lines(project, bill, style.paint());
    }
}
