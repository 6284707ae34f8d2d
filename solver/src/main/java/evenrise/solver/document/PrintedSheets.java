package evenrise.solver.document;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import evenrise.solver.report.page.Document;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;

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

    private PrintedSheets() {}

    public static byte[] of(Document document, Paper paper) {
        XRLog.setLoggingEnabled(false);
        String page = Templates.fill(
                "print.peb",
                Map.of(
                        "document",
                        document,
                        "grids",
                        document.grids().stream().map(HtmlPage::shown).toList(),
                        "curve",
                        CurveSvg.of(document),
                        "paper",
                        paper.size));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            new PdfRendererBuilder()
                    .useFastMode()
                    .useSVGDrawer(new BatikSVGDrawer())
                    .withHtmlContent(page, null)
                    .toStream(bytes)
                    .run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
