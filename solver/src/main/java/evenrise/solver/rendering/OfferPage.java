package evenrise.solver.rendering;

import evenrise.model.plan.Cautions;
import evenrise.solver.report.Alternate;
import evenrise.solver.report.AlternateRows;
import evenrise.solver.report.AlternateText;
import evenrise.solver.report.DrawnPrices;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Alternates for a client, on a self-contained page without a script and on paper: no part of a plan, no unit price. */
public final class OfferPage {
    private OfferPage() {}

    /** Which alternates a sentence is about; empty where it is about all. */
    public record Basis(String names, String sentence) {}

    public static String html(String title, List<Alternate> alternates) {
        String style = Templates.text("offer.css");
        Map<String, Object> values = values(title, alternates);
        values.put("style", style);
        values.put("styleHash", Policy.hash(style));
        return Templates.fill("offer.peb", values);
    }

    /** On A4: upright for up to four alternates, else across. */
    public static byte[] pdf(String title, List<Alternate> alternates) {
        String paper = alternates.size() > 4 ? "297mm 210mm" : "210mm 297mm";
        return PagePrint.of("print/offer.peb", values(title, alternates), paper);
    }

    private static Map<String, Object> values(String title, List<Alternate> alternates) {
        Map<String, Object> values = new HashMap<>();
        values.put("title", title);
        values.put("alternates", alternates);
        values.put("figures", AlternateRows.figures(alternates));
        values.put("things", AlternateRows.things(alternates));
        values.put(
                "bases",
                AlternateText.bases(alternates).entrySet().stream()
                        .map(each -> new Basis(
                                each.getValue().size() == alternates.size() ? "" : String.join(", ", each.getValue()),
                                each.getKey()))
                        .toList());
        values.put("drawn", DrawnPrices.of(alternates));
        values.put("how", DrawnPrices.HOW);
        values.put("breaks", !alternates.stream().allMatch(Alternate::keepsAll));
        values.put("cautions", Cautions.ALL);
        return values;
    }
}
