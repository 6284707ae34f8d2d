package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.model.plan.Cautions;
import evenrise.solver.report.Alternate;
import evenrise.solver.report.AlternateRows;
import evenrise.solver.report.AlternateText;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.PDDocument;

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
        Map<String, Object> values = values(title, alternates);
        XRLog.setLoggingEnabled(false);
        try (PDDocument pdf = new PDDocument()) {
            PrintFonts fonts = PrintFonts.in(pdf, signs(values.toString()));
            values.put("family", fonts.family());
            String paper = alternates.size() > 4 ? "297mm 210mm" : "210mm 297mm";
            Markup.of(fonts.legible(Templates.fill("print/offer.peb", values))).print(paper, fonts, pdf);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
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
        values.put("breaks", !alternates.stream().allMatch(Alternate::keepsAll));
        values.put("cautions", Cautions.ALL);
        return values;
    }

    private static SortedSet<Integer> signs(String text) {
        SortedSet<Integer> signs = new TreeSet<>();
        text.codePoints().filter(sign -> !Character.isWhitespace(sign)).forEach(signs::add);
        return signs;
    }
}
