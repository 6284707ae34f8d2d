package evenrise.solver.rendering;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** Pages of printed sheets as pictures, drawn from the bytes of the file itself. */
public final class SheetPictures implements AutoCloseable {
    private static final float POINTS_PER_INCH = 72;

    private final PDDocument pdf;
    private final PDFRenderer renderer;

    public SheetPictures(byte[] file) {
        try {
            this.pdf = Loader.loadPDF(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        this.renderer = new PDFRenderer(pdf);
    }

    public int pages() {
        return pdf.getNumberOfPages();
    }

    /** Width of a page by its height. */
    public double shape(int page) {
        return pdf.getPage(page).getMediaBox().getWidth()
                / pdf.getPage(page).getMediaBox().getHeight();
    }

    /**
     * A page as PNG, one at a time.
     *
     * @param page from 0
     * @param wide picture elements from side to side
     */
    public synchronized byte[] png(int page, int wide) {
        float inches = pdf.getPage(page).getMediaBox().getWidth() / POINTS_PER_INCH;
        try {
            BufferedImage picture = renderer.renderImageWithDPI(page, wide / inches, ImageType.RGB);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            ImageIO.write(picture, "png", bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public synchronized void close() {
        try {
            pdf.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
