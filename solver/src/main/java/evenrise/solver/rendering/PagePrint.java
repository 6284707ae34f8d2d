package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.pdfbox.pdmodel.PDDocument;

/** A template filled in and printed, with fonts that have its signs. */
final class PagePrint {
    private PagePrint() {}

    /** @param paper width and height */
    static byte[] of(String template, Map<String, Object> filled, String paper) {
        Map<String, Object> values = new HashMap<>(filled);
        XRLog.setLoggingEnabled(false);
        try (PDDocument pdf = new PDDocument()) {
            PrintFonts fonts = PrintFonts.in(pdf, signs(values.toString()));
            values.put("family", fonts.family());
            Markup.of(fonts.legible(Templates.fill(template, values))).print(paper, fonts, pdf);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static SortedSet<Integer> signs(String text) {
        SortedSet<Integer> signs = new TreeSet<>();
        text.codePoints().filter(sign -> !Character.isWhitespace(sign)).forEach(signs::add);
        return signs;
    }
}
