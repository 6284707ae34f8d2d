package evenrise.solver.rendering;

import evenrise.solver.document.Document;
import evenrise.solver.document.Imprint;
import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** What a printed document says of itself: page numbers, title, language. No time of the clock, so that equal sheets are equal files. */
final class PrintImprint {
    private static final float SIZE = 7.5f;
    private static final float RIGHT = 34;
    private static final float BOTTOM = 18.5f;
    private static final float TOP = 15;
    private static final float SMALLEST = 5;
    private static final float BROKEN_RED = 0.55f;
    private static final float BROKEN_GREEN = 0.11f;
    private static final float BROKEN_BLUE = 0.09f;

    private final PDDocument pdf;
    private final Imprint imprint;
    private final String headline;
    private final boolean isBroken;

    PrintImprint(PDDocument pdf, Document document) {
        this.pdf = pdf;
        this.imprint = document.imprint();
        this.headline = document.headline();
        this.isBroken = document.isBroken();
    }

    void write(PDFont font) throws IOException {
        int pages = pdf.getNumberOfPages();
        for (int i = 0; i < pages; i++) {
            number(pdf.getPage(i), "page " + (i + 1) + " of " + pages, font);
            first(pdf.getPage(i), font);
        }
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(imprint.project() + ", revision " + imprint.revision());
        information.setSubject("Project file SHA-256 " + imprint.projectSha256());
        information.setCreator("evenrise " + imprint.version());
        pdf.setDocumentInformation(information);
        pdf.setDocumentId((long) (imprint.projectSha256() + imprint.revision() + imprint.date()).hashCode());
        pdf.getDocumentCatalog().setLanguage("en");
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        pdf.getDocumentCatalog().setViewerPreferences(preferences);
    }

    /** What all judges together say, above everything else on the page. */
    private void first(PDPage page, PDFont font) throws IOException {
        float room = page.getMediaBox().getWidth() - 2 * RIGHT;
        float size = SIZE;
        while (size > SMALLEST && font.getStringWidth(headline) / 1000 * size > room) {
            size -= 0.25f;
        }
        String shown = headline;
        while (font.getStringWidth(shown) / 1000 * size > room) {
            shown = shown.substring(0, shown.length() - 2) + ".";
        }
        try (PDPageContentStream stream = new PDPageContentStream(pdf, page, AppendMode.APPEND, true, true)) {
            stream.beginText();
            stream.setFont(font, size);
            if (isBroken) {
                stream.setNonStrokingColor(BROKEN_RED, BROKEN_GREEN, BROKEN_BLUE);
            }
            stream.newLineAtOffset(RIGHT, page.getMediaBox().getHeight() - TOP);
            stream.showText(shown);
            stream.endText();
        }
    }

    private void number(PDPage page, String text, PDFont font) throws IOException {
        float width = font.getStringWidth(text) / 1000 * SIZE;
        try (PDPageContentStream stream = new PDPageContentStream(pdf, page, AppendMode.APPEND, true, true)) {
            stream.beginText();
            stream.setFont(font, SIZE);
            stream.newLineAtOffset(page.getMediaBox().getWidth() - RIGHT - width, BOTTOM);
            stream.showText(text);
            stream.endText();
        }
    }
}
