package evenrise.solver.rendering;

import com.openhtmltopdf.bidi.support.ICUBidiReorderer;
import com.openhtmltopdf.bidi.support.ICUBidiSplitter;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import evenrise.solver.document.Document;
import evenrise.solver.document.Imprint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/** The set of sheets to print, as PDF. */
public final class PrintedSheets {
    /** Sizes of paper. */
    public enum Paper {
        A4("210mm 297mm"),
        LETTER("8.5in 11in");

        private final String size;

        Paper(String size) {
            this.size = size;
        }
    }

    /** A line of the contents; pages count from 1. */
    public record Entry(String title, int page) {}

    /**
     * Text in the margins of every page; none ends the style sheet's string.
     *
     * @param place which section the page belongs to
     */
    public record Margins(String project, String place, String revision, String date) {
        private static final int LONGEST = 60;

        static Margins of(Imprint imprint, String place) {
            return new Margins(
                    plain(imprint.project()), plain(place), plain(imprint.revision()), plain(imprint.date()));
        }

        private static String plain(String text) {
            String plain = text.replaceAll("[\"\\\\]", "");
            return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST - 1) + "…";
        }
    }

    private final Document document;
    private final SortedSet<Integer> signs;
    private final List<PrintSection> sections;

    /** What every paper shares is made here, once. */
    public PrintedSheets(Document document) {
        ShownTables tables = new ShownTables();
        this.document = document;
        this.signs = UsedCharacters.of(document, tables);
        this.sections = PrintSections.of(document, tables);
    }

    public byte[] on(Paper paper) {
        XRLog.setLoggingEnabled(false);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument pdf = new PDDocument()) {
            new Printing(paper, pdf).draw();
            pdf.save(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** One file. */
    private final class Printing {
        private final Paper paper;
        private final PDDocument pdf;
        private final PrintFonts fonts;

        Printing(Paper paper, PDDocument pdf) throws IOException {
            this.paper = paper;
            this.pdf = pdf;
            this.fonts = PrintFonts.in(pdf, signs);
        }

        private void draw() throws IOException {
            List<Entry> contents = new ArrayList<>();
            PrintOutline outline = new PrintOutline(pdf);
            for (PrintSection section : sections) {
                contents.add(new Entry(section.title(), pdf.getNumberOfPages()));
                boolean isFirst = true;
                for (PrintSection.Part part : section.parts()) {
                    int page = pdf.getNumberOfPages();
                    render(section.template(), part.mark().isEmpty() ? section.title() : part.mark(), part.values());
                    if (isFirst) {
                        outline.section(section.title(), page);
                        isFirst = false;
                    }
                    if (!part.mark().isEmpty()) {
                        outline.within(part.mark(), page);
                    }
                }
            }
            cover(contents);
            new PrintImprint(pdf, document).write(fonts.text());
        }

        /** Drawn last, for it tells the pages of all else. Its own length moves them. */
        private void cover(List<Entry> contents) throws IOException {
            int others = pdf.getNumberOfPages();
            int length = 1;
            for (int guess = 0; length != guess; ) {
                guess = length;
                while (pdf.getNumberOfPages() > others) {
                    pdf.removePage(others);
                }
                int before = guess + 1;
                render(
                        "cover",
                        "",
                        Map.of(
                                "contents",
                                contents.stream()
                                        .map(each -> new Entry(each.title(), each.page() + before))
                                        .toList(),
                                "missing",
                                fonts.missing(),
                                "replacement",
                                PrintFonts.REPLACEMENT));
                length = pdf.getNumberOfPages() - others;
            }
            for (int i = 0; i < length; i++) {
                PDPage page = pdf.getPage(others + i);
                pdf.getPages().remove(page);
                pdf.getPages().insertBefore(page, pdf.getPage(i));
            }
        }

        /** Appends the pages of one part. */
        private void render(String template, String place, Map<String, Object> values) throws IOException {
            Map<String, Object> all = new HashMap<>(values);
            all.put("document", document);
            all.put("paper", paper.size);
            all.put("margins", Margins.of(document.imprint(), place));
            all.put("family", fonts.family());
            all.put("loadMillimetres", PrintSections.loadMillimetres(document));
            PdfRendererBuilder builder = new PdfRendererBuilder()
                    .useFastMode()
                    .useSVGDrawer(new BatikSVGDrawer())
                    .useUnicodeBidiSplitter(new ICUBidiSplitter.ICUBidiSplitterFactory())
                    .useUnicodeBidiReorderer(new ICUBidiReorderer())
                    .useUnicodeLineBreaker(new WordBreaks())
                    .usePDDocument(pdf)
                    .withHtmlContent(fonts.legible(Templates.fill("print/" + template + ".peb", all)), null);
            fonts.addTo(builder);
            try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
                renderer.createPDFKeepOpen();
            }
        }
    }
}
