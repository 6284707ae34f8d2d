package evenrise.solver.drawing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** How wide texts are in the font that sheets are printed with: Liberation Sans, as wide as Arial and Helvetica. */
public final class TextWidths {
    /** Height of capitals over the size of the font, from the font's own table. */
    public static final double CAPITALS = 1409.0 / 2048;

    private static final TextWidths REGULAR = new TextWidths("/liberation/LiberationSans-Regular.ttf");
    private static final TextWidths BOLD = new TextWidths("/liberation/LiberationSans-Bold.ttf");

    /** Of a sign that the font lacks, which another draws. */
    private static final double FOREIGN = 1;

    private final TrueTypeFont font;

    private TextWidths(String resource) {
        try (InputStream in = TextWidths.class.getResourceAsStream(resource)) {
            font = new TTFParser(true).parse(new RandomAccessReadBuffer(in.readAllBytes()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static double of(String text, double size, boolean isBold) {
        return (isBold ? BOLD : REGULAR).ems(text) * size;
    }

    private synchronized double ems(String text) {
        return text.codePoints().mapToDouble(this::ems).sum();
    }

    private double ems(int sign) {
        try {
            int glyph = font.getUnicodeCmapLookup().getGlyphId(sign);
            return glyph == 0 ? FOREIGN : (double) font.getAdvanceWidth(glyph) / font.getUnitsPerEm();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
