package evenrise.solver.rendering;

import com.openhtmltopdf.bidi.support.ICUBidiReorderer;
import com.openhtmltopdf.bidi.support.ICUBidiSplitter;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import java.io.IOException;
import java.io.StringReader;
import java.text.Bidi;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A filled-in template, read once and printed on any paper. */
final class Markup {
    private static final DocumentBuilder READER = reader();

    private final Document tree;
    private final boolean isTurned;

    private Markup(Document tree, boolean isTurned) {
        this.tree = tree;
        this.isTurned = isTurned;
    }

    /** @param html whose first style sheet is empty: it is that of the paper */
    static Markup of(String html) {
        try {
            synchronized (READER) {
                return new Markup(
                        READER.parse(new InputSource(new StringReader(html))),
                        Bidi.requiresBidi(html.toCharArray(), 0, html.length()));
            }
        } catch (SAXException | IOException e) {
            throw new IllegalStateException("a template is not well-formed", e);
        }
    }

    /** Appends its pages. */
    void print(String paper, PrintFonts fonts, TaggedPages pages, PDDocument pdf) throws IOException {
        tree.getElementsByTagName("style").item(0).setTextContent("@page{size:" + paper + "}");
        PdfRendererBuilder builder = new PdfRendererBuilder()
                .useFastMode()
                .usePdfUaAccessibility(true)
                .useSVGDrawer(new BatikSVGDrawer())
                .useUnicodeLineBreaker(new WordBreaks())
                .usePDDocument(pdf)
                .usePageSupplier(pages)
                .withW3cDocument(tree, null);
        if (isTurned) {
            builder.useUnicodeBidiSplitter(new ICUBidiSplitter.ICUBidiSplitterFactory())
                    .useUnicodeBidiReorderer(new ICUBidiReorderer());
        }
        fonts.addTo(builder);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.createPDFKeepOpen();
        }
    }

    private static DocumentBuilder reader() {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        try {
            return factory.newDocumentBuilder();
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
    }
}
