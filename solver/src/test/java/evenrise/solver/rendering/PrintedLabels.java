package evenrise.solver.rendering;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Sheets of labels as whoever holds them in the hand finds them: letters and codes, label by label. */
final class PrintedLabels {
    private static final float DOTS_PER_INCH = 300;
    private static final double POINTS = 72 / 25.4;

    /** A letter and where it is drawn, in millimetres from the sheet's upper left edge; its foot at the bottom. */
    record Letter(int page, String sign, double left, double right, double top, double bottom) {}

    private final PDDocument pdf;
    private final LabelStock stock;

    private PrintedLabels(PDDocument pdf, LabelStock stock) {
        this.pdf = pdf;
        this.stock = stock;
    }

    static PrintedLabels read(byte[] sheets, LabelStock stock) throws IOException {
        return new PrintedLabels(Loader.loadPDF(sheets), stock);
    }

    int sheets() {
        return pdf.getNumberOfPages() - 1;
    }

    double[] pageMillimetres(int page) {
        return new double[] {
            pdf.getPage(page).getMediaBox().getWidth() / POINTS,
            pdf.getPage(page).getMediaBox().getHeight() / POINTS
        };
    }

    /** Of all sheets of labels; the page before them is not one. */
    List<Letter> letters() throws IOException {
        List<Letter> letters = new ArrayList<>();
        for (int page = 2; page <= pdf.getNumberOfPages(); page++) {
            int on = page - 2;
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition at) {
                    letters.add(new Letter(
                            on,
                            at.getUnicode(),
                            at.getXDirAdj() / POINTS,
                            (at.getXDirAdj() + at.getWidthDirAdj()) / POINTS,
                            (at.getYDirAdj() - 0.75 * at.getFontSizeInPt()) / POINTS,
                            at.getYDirAdj() / POINTS));
                }
            };
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            stripper.getText(pdf);
        }
        return letters;
    }

    /** Which label a letter lies on as a whole; empty where it lies on none. */
    Optional<Integer> labelOf(Letter letter) {
        for (int i = 0; i < stock.onASheet(); i++) {
            if (letter.left() >= stock.left(i)
                    && letter.right() <= stock.left(i) + stock.labelWidth()
                    && letter.top() >= stock.top(i)
                    && letter.bottom() <= stock.top(i) + stock.labelHeight()) {
                return Optional.of(letter.page() * stock.onASheet() + i);
            }
        }
        return Optional.empty();
    }

    /** What the code of each label on a sheet says; empty where there is none. */
    List<Optional<String>> codes(int sheet) throws IOException {
        BufferedImage image = new PDFRenderer(pdf).renderImageWithDPI(sheet + 1, DOTS_PER_INCH);
        double dots = DOTS_PER_INCH / 25.4;
        List<Optional<String>> codes = new ArrayList<>();
        for (int i = 0; i < stock.onASheet(); i++) {
            BufferedImage label = image.getSubimage(
                    (int) (stock.left(i) * dots),
                    (int) (stock.top(i) * dots),
                    (int) Math.min(stock.labelWidth() * dots, image.getWidth() - stock.left(i) * dots - 1),
                    (int) Math.min(stock.labelHeight() * dots, image.getHeight() - stock.top(i) * dots - 1));
            codes.add(code(label));
        }
        return codes;
    }

    private static Optional<String> code(BufferedImage label) {
        int[] dots = label.getRGB(0, 0, label.getWidth(), label.getHeight(), null, 0, label.getWidth());
        BinaryBitmap bits = new BinaryBitmap(
                new HybridBinarizer(new RGBLuminanceSource(label.getWidth(), label.getHeight(), dots)));
        try {
            return Optional.of(new QRCodeReader()
                    .decode(bits, Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE))
                    .getText());
        } catch (NotFoundException e) {
            return Optional.empty();
        } catch (ReaderException e) {
            throw new AssertionError("a code is there and cannot be read", e);
        }
    }
}
