package evenrise.solver.document;

import evenrise.solver.report.page.Imprint;
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

    private final PDDocument pdf;
    private final Imprint imprint;

    PrintImprint(PDDocument pdf, Imprint imprint) {
        this.pdf = pdf;
        this.imprint = imprint;
    }

    void write(PDFont font) throws IOException {
        int pages = pdf.getNumberOfPages();
        for (int i = 0; i < pages; i++) {
            number(pdf.getPage(i), "page " + (i + 1) + " of " + pages, font);
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
