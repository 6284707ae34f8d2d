package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.solver.document.Document;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.SortedSet;
import org.apache.pdfbox.pdmodel.PDDocument;

/** A PDF of sheets without numbers, index and outline: labels. */
final class LooseSheets {
    /** Draws all of them. */
    interface Drawing {
        void draw(LooseSheets sheets) throws IOException;
    }

    private final PDDocument pdf;
    private final PrintFonts fonts;
    private final ReadingOrder order;
    private final TaggedPages pages = new TaggedPages();

    private LooseSheets(PDDocument pdf, SortedSet<Integer> signs) throws IOException {
        this.pdf = pdf;
        this.fonts = PrintFonts.in(pdf, signs);
        this.order = new ReadingOrder(pdf);
    }

    /**
     * The finished file.
     *
     * @param title behind the project's name
     * @param language of the text, as a page states it
     * @param signs that are in it; spaces count for nothing
     */
    static byte[] of(Document document, String title, String language, SortedSet<Integer> signs, Drawing drawing) {
        signs.removeIf(Character::isWhitespace);
        XRLog.setLoggingEnabled(false);
        try (PDDocument pdf = new PDDocument()) {
            LooseSheets sheets = new LooseSheets(pdf, signs);
            drawing.draw(sheets);
            sheets.order.finish();
            new PrintImprint(pdf, document.imprint(), document.headline(), document.isBroken())
                    .describe(document.imprint().project() + ", " + title, language);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    PrintFonts fonts() {
        return fonts;
    }

    /** @param paper width and height, as a style sheet writes them */
    void print(String template, Map<String, Object> values, String paper) throws IOException {
        Markup.of(fonts.legible(Templates.fill("print/" + template + ".peb", values)))
                .print(paper, fonts, pages, pdf);
        order.take();
    }
}
