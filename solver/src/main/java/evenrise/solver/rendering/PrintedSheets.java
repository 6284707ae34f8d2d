package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.model.contract.Harmless;
import evenrise.solver.document.Document;
import evenrise.solver.document.Imprint;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/** The set of sheets to print, as PDF. */
public final class PrintedSheets {
    /** Sizes of paper. */
    public enum Paper {
        A4("210mm", "297mm", "420mm"),
        LETTER("8.5in", "11in", "17in");

        private final String shortSide;
        private final String longSide;
        private final String twiceTheShortSide;

        Paper(String shortSide, String longSide, String twiceTheShortSide) {
            this.shortSide = shortSide;
            this.longSide = longSide;
            this.twiceTheShortSide = twiceTheShortSide;
        }

        private String size(PrintSection.Form form) {
            return switch (form) {
                case UPRIGHT -> shortSide + " " + longSide;
                case ACROSS -> longSide + " " + shortSide;
                case DRAWING -> twiceTheShortSide + " " + longSide;
            };
        }
    }

    /** A line of the index; pages count from 1. */
    public record Entry(String title, String sheets, int page) {}

    /**
     * Text in the margins of every page, each within a string of the style sheet.
     *
     * @param place which section the page belongs to
     */
    public record Margins(String project, String place, String revision, String date) {
        private static final int LONGEST = 60;

        static Margins of(Imprint imprint, String place) {
            return new Margins(css(imprint.project()), css(place), css(imprint.revision()), css(imprint.date()));
        }

        private static String css(String text) {
            return Harmless.cut(Harmless.withinCss(text), LONGEST);
        }
    }

    private final Document document;
    private final SortedSet<Integer> signs;
    private final Map<SheetSection, PrintSection> sections;

    /** All sections. */
    public PrintedSheets(Document document) {
        this(document, SheetSection.ALL);
    }

    /** What every paper shares is made here, once. */
    public PrintedSheets(Document document, Collection<SheetSection> wanted) {
        ShownTables tables = new ShownTables();
        this.document = document;
        this.signs = UsedCharacters.of(document, tables);
        this.sections = PrintSections.of(document, tables, wanted);
    }

    public byte[] on(Paper paper) {
        return on(List.of(paper)).get(paper);
    }

    /** What they share is filled in and read once. */
    public Map<Paper, byte[]> on(List<Paper> papers) {
        XRLog.setLoggingEnabled(false);
        List<Printing> files = new ArrayList<>();
        try {
            for (Paper paper : papers) {
                files.add(new Printing(paper));
            }
            for (Map.Entry<SheetSection, PrintSection> each : sections.entrySet()) {
                PrintSection section = each.getValue();
                files.forEach(file -> file.begin(each.getKey(), section));
                for (PrintSection.Part part : section.parts()) {
                    Markup markup = markup(
                            section.template(),
                            part.mark().isEmpty() ? section.title() : part.mark(),
                            part.values(),
                            files.get(0).fonts);
                    for (Printing file : files) {
                        file.draw(section, part, markup);
                    }
                }
            }
            Map<Paper, byte[]> all = new EnumMap<>(Paper.class);
            for (Printing file : files) {
                all.put(file.paper, file.finished());
            }
            return all;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            files.forEach(Printing::close);
        }
    }

    private Markup markup(String template, String place, Map<String, Object> values, PrintFonts fonts) {
        Map<String, Object> all = new HashMap<>(values);
        all.put("document", document);
        all.put("margins", Margins.of(document.imprint(), place));
        all.put("family", fonts.family());
        all.put("loadMillimetres", PrintSections.loadMillimetres(document));
        return Markup.of(fonts.legible(Templates.fill("print/" + template + ".peb", all)));
    }

    /** One file. */
    private final class Printing {
        private final Paper paper;
        private final PDDocument pdf = new PDDocument();
        private final PrintFonts fonts;
        private final PrintOutline outline = new PrintOutline(pdf);
        private final ReadingOrder order = new ReadingOrder(pdf);
        private final SheetNumbers numbers = new SheetNumbers(document.imprint());
        private String begun = "";

        Printing(Paper paper) throws IOException {
            this.paper = paper;
            this.fonts = PrintFonts.in(pdf, signs);
        }

        void begin(SheetSection which, PrintSection section) {
            begun = section.title();
            numbers.begin(which, section.title());
        }

        void draw(PrintSection section, PrintSection.Part part, Markup markup) throws IOException {
            int page = pdf.getNumberOfPages();
            print(markup, section.form());
            numbers.drawn(pdf.getNumberOfPages() - page);
            if (!begun.isEmpty()) {
                outline.section(begun, page);
                begun = "";
            }
            if (!part.mark().isEmpty()) {
                outline.within(part.mark(), page);
            }
        }

        byte[] finished() throws IOException {
            cover();
            order.finish();
            new PrintImprint(pdf, document).write(fonts.text(), numbers.all(pdf.getNumberOfPages()));
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            pdf.save(bytes);
            return bytes.toByteArray();
        }

        /** Drawn last, for it tells the pages of all else. Its own length moves them. */
        private void cover() throws IOException {
            int others = pdf.getNumberOfPages();
            int length = 1;
            Optional<COSDictionary> read = Optional.empty();
            for (int guess = 0; length != guess; ) {
                guess = length;
                read.ifPresent(order::drop);
                while (pdf.getNumberOfPages() > others) {
                    pdf.removePage(others);
                }
                int before = guess;
                Map<String, Object> values = Map.of(
                        "contents",
                        numbers.index(before),
                        "missing",
                        fonts.missing(),
                        "replacement",
                        PrintFonts.REPLACEMENT);
                read = Optional.of(print(markup("cover", "", values, fonts), PrintSection.Form.UPRIGHT));
                length = pdf.getNumberOfPages() - others;
            }
            read.ifPresent(order::putFirst);
            for (int i = 0; i < length; i++) {
                PDPage page = pdf.getPage(others + i);
                pdf.getPages().remove(page);
                pdf.getPages().insertBefore(page, pdf.getPage(i));
            }
        }

        /** Appends the pages of one part. */
        private COSDictionary print(Markup markup, PrintSection.Form form) throws IOException {
            markup.print(paper.size(form), fonts, pdf);
            return order.take();
        }

        void close() {
            try {
                pdf.close();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
