package evenrise.solver.rendering;

import evenrise.solver.document.Imprint;
import evenrise.solver.document.SheetWords;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.DublinCoreSchema;
import org.apache.xmpbox.schema.XMPSchema;
import org.apache.xmpbox.xml.XmpSerializer;

/** What a printed document says of itself: page numbers, title, language. No time of the clock, so that equal sheets are equal files. */
final class PrintImprint {
    private static final float SIZE = 7.5f;
    private static final float RIGHT = 34;
    private static final float BOTTOM = 18.5f;
    private static final float TOP = 15;
    private static final float SMALLEST = 5;
    private static final float ALARM_RED = 0.55f;
    private static final float ALARM_GREEN = 0.11f;
    private static final float ALARM_BLUE = 0.09f;

    private final TaggedFile file;
    private final PDDocument pdf;
    private final Imprint imprint;
    private final String headline;
    private final boolean isAlarm;

    PrintImprint(TaggedFile file, Imprint imprint, String headline, boolean isAlarm) {
        this.file = file;
        this.pdf = file.whole();
        this.imprint = imprint;
        this.headline = headline;
        this.isAlarm = isAlarm;
    }

    /** @param sheets number of each page as a sheet */
    void write(PDFont font, List<String> sheets, SheetWords words) throws IOException {
        int pages = file.pages();
        for (int i = 0; i < pages; i++) {
            // The blank keeps the two apart for who takes the text out.
            String sheet = words.say("imprint.sheet", sheets.get(i)) + " ";
            String number = words.say("imprint.page", i + 1, pages);
            file.draw(i, (page, stream) -> {
                sheet(page, sheet, font, stream);
                number(page, number, font, stream);
                first(page, font, stream);
            });
        }
        describe(
                imprint.project() + ", " + words.say("imprint.revision") + " " + imprint.revision(),
                words.language().word());
    }

    /** What a reader is told of the whole, and who hears it. */
    void describe(String title, String language) throws IOException {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        information.setSubject("Project file SHA-256 " + imprint.projectSha256());
        information.setCreator("evenrise " + imprint.version());
        pdf.setDocumentInformation(information);
        pdf.setDocumentId((long) (imprint.projectSha256() + imprint.revision() + imprint.date()).hashCode());
        pdf.getDocumentCatalog().setLanguage(language);
        pdf.getDocumentCatalog().setMetadata(metadata(information.getTitle(), language));
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        pdf.getDocumentCatalog().setViewerPreferences(preferences);
    }

    /** That it is made for who hears it, by the standard ISO 14289-1. */
    private PDMetadata metadata(String title, String language) throws IOException {
        XMPMetadata metadata = XMPMetadata.createXMPMetadata();
        DublinCoreSchema core = metadata.createAndAddDublinCoreSchema();
        core.setTitle(title);
        core.addLanguage(language);
        XMPSchema accessible = new XMPSchema(metadata, "http://www.aiim.org/pdfua/ns/id/", "pdfuaid", "PDF/UA ID");
        accessible.setIntegerPropertyValue("part", 1);
        metadata.addSchema(accessible);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            new XmpSerializer().serialize(metadata, bytes, true);
        } catch (TransformerException e) {
            throw new IllegalStateException(e);
        }
        return new PDMetadata(pdf, new ByteArrayInputStream(bytes.toByteArray()));
    }

    /** What all judges together say, above everything else on the page. */
    private void first(PDPage page, PDFont font, PDPageContentStream stream) throws IOException {
        float room = page.getMediaBox().getWidth() - 2 * RIGHT;
        float size = SIZE;
        while (size > SMALLEST && font.getStringWidth(headline) / 1000 * size > room) {
            size -= 0.25f;
        }
        String shown = headline;
        while (font.getStringWidth(shown) / 1000 * size > room) {
            shown = shown.substring(0, shown.length() - 2) + ".";
        }
        stream.beginText();
        stream.setFont(font, size);
        if (isAlarm) {
            stream.setNonStrokingColor(ALARM_RED, ALARM_GREEN, ALARM_BLUE);
        }
        stream.newLineAtOffset(RIGHT, page.getMediaBox().getHeight() - TOP);
        stream.showText(shown);
        stream.endText();
    }

    private void number(PDPage page, String text, PDFont font, PDPageContentStream stream) throws IOException {
        float width = font.getStringWidth(text) / 1000 * SIZE;
        below(text, page.getMediaBox().getWidth() - RIGHT - width, font, stream);
    }

    private void sheet(PDPage page, String text, PDFont font, PDPageContentStream stream) throws IOException {
        float width = font.getStringWidth(text) / 1000 * SIZE;
        below(text, (page.getMediaBox().getWidth() - width) / 2, font, stream);
    }

    private static void below(String text, float left, PDFont font, PDPageContentStream stream) throws IOException {
        stream.beginText();
        stream.setFont(font, SIZE);
        stream.newLineAtOffset(left, BOTTOM);
        stream.showText(text);
        stream.endText();
    }
}
