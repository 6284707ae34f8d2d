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
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

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
            String page = fonts.legible(Templates.fill(template, values));
            Markup.of(page).print(paper, fonts, new TaggedPages(), pdf);
            imprint(pdf, page);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** No time of the clock, so that equal pages are equal files. */
    private static void imprint(PDDocument pdf, String page) {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(pdf.getDocumentInformation().getTitle());
        information.setCreator("evenrise");
        pdf.setDocumentInformation(information);
        pdf.setDocumentId((long) page.hashCode());
    }

    private static SortedSet<Integer> signs(String text) {
        SortedSet<Integer> signs = new TreeSet<>();
        text.codePoints().filter(sign -> !Character.isWhitespace(sign)).forEach(signs::add);
        return signs;
    }
}
