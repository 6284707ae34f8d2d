package evenrise.solver.rendering;

import evenrise.model.plan.Cautions;
import evenrise.solver.report.EstimateSheet;
import java.util.HashMap;
import java.util.Map;

/** An estimate for whoever makes it, on a self-contained page without a script and on paper. */
public final class EstimatePage {
    private static final String PAPER = "210mm 297mm";

    private EstimatePage() {}

    public static String html(EstimateSheet sheet) {
        String style = Templates.text("offer.css");
        Map<String, Object> values = values(sheet);
        values.put("style", style);
        values.put("styleHash", Policy.hash(style));
        return Templates.fill("estimate.peb", values);
    }

    /** On A4, upright. */
    public static byte[] pdf(EstimateSheet sheet) {
        return PagePrint.of("print/estimate.peb", values(sheet), PAPER);
    }

    private static Map<String, Object> values(EstimateSheet sheet) {
        Map<String, Object> values = new HashMap<>();
        values.put("sheet", sheet);
        values.put("cautions", Cautions.ALL);
        return values;
    }
}
