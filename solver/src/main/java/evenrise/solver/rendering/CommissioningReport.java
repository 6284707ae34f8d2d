package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.model.plan.Cautions;
import evenrise.solver.report.SiteRecord;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.PDDocument;

/** What was measured beside what was planned, on a self-contained page without a script and on paper, to be signed. */
public final class CommissioningReport {
    private CommissioningReport() {}

    /** @param curves a recorded start over the planned one, where one was recorded */
    public static String html(SiteRecord record, Optional<OverlaidCurves> curves) {
        String style = Templates.text("offer.css") + Templates.text("measured.css");
        Map<String, Object> values = values(record, curves);
        values.put("style", style);
        values.put("styleHash", Policy.hash(style));
        return Templates.fill("measured.peb", values);
    }

    /** On A4. */
    public static byte[] pdf(SiteRecord record, Optional<OverlaidCurves> curves) {
        Map<String, Object> values = values(record, curves);
        XRLog.setLoggingEnabled(false);
        try (PDDocument pdf = new PDDocument()) {
            PrintFonts fonts = PrintFonts.in(pdf, signs(values.toString()));
            values.put("family", fonts.family());
            Markup.of(fonts.legible(Templates.fill("print/measured.peb", values)))
                    .print("210mm 297mm", fonts, new TaggedPages(), pdf);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, Object> values(SiteRecord record, Optional<OverlaidCurves> curves) {
        Map<String, Object> values = new HashMap<>();
        values.put("record", record);
        values.put("hasCurves", curves.isPresent());
        curves.ifPresent(each -> values.put("curves", each));
        values.put("cautions", Cautions.ALL);
        return values;
    }

    private static SortedSet<Integer> signs(String text) {
        SortedSet<Integer> signs = new TreeSet<>();
        text.codePoints().filter(sign -> !Character.isWhitespace(sign)).forEach(signs::add);
        return signs;
    }
}
