package evenrise.solver.rendering;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import java.io.File;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The fonts of one printed document, of which it carries the signs that it uses: Liberation Sans, then DejaVu Sans
 * Condensed for what that lacks, then what this machine has for what both lack.
 */
final class PrintFonts {
    /** Drawn where no font knows a sign. */
    static final String REPLACEMENT = "\u25a1";

    private static final List<String> REGULAR = List.of(
            "/liberation/LiberationSans-Regular.ttf", "/net/sf/jasperreports/fonts/dejavu/DejaVuSansCondensed.ttf");
    private static final List<String> BOLD = List.of(
            "/liberation/LiberationSans-Bold.ttf", "/net/sf/jasperreports/fonts/dejavu/DejaVuSansCondensed-Bold.ttf");

    private record Face(String family, PDFont font, int weight) {}

    private final List<Face> faces;
    private final Set<Integer> unknown;
    private final Map<Integer, Double> widths = new HashMap<>();

    private PrintFonts(List<Face> faces, Set<Integer> unknown) {
        this.faces = faces;
        this.unknown = unknown;
    }

    /** @param signs that are to be printed */
    static PrintFonts in(PDDocument pdf, SortedSet<Integer> signs) throws IOException {
        SortedSet<Integer> unknown = new TreeSet<>(signs);
        List<Face> faces = new ArrayList<>();
        for (int i = 0; i < REGULAR.size(); i++) {
            try (TrueTypeFont font = new TTFParser()
                    .parse(new RandomAccessReadBuffer(resource(REGULAR.get(i)).readAllBytes()))) {
                unknown.removeAll(known(font, unknown));
            }
            faces.add(new Face("sheet" + i, load(pdf, resource(REGULAR.get(i))), 400));
            faces.add(new Face("sheet" + i, load(pdf, resource(BOLD.get(i))), 700));
        }
        if (!unknown.isEmpty()) {
            for (File file : SystemFonts.knowing(unknown)) {
                unknown.removeAll(SystemFonts.known(file, unknown));
                faces.add(new Face("machine" + faces.size(), load(pdf, new FileInputStream(file)), 400));
            }
        }
        return new PrintFonts(faces, unknown);
    }

    /** For what is written without the renderer. */
    PDFont text() {
        return faces.get(0).font();
    }

    List<PDFont> all() {
        return faces.stream().map(Face::font).toList();
    }

    /** The families in their order, as a style sheet lists them. */
    String family() {
        return faces.stream().map(Face::family).distinct().collect(Collectors.joining(","));
    }

    void addTo(PdfRendererBuilder builder) {
        faces.forEach(face -> builder.useFont(
                new PDFontSupplier(face.font()), face.family(), face.weight(), FontStyle.NORMAL, false));
    }

    /** How wide a text is drawn, in its letters' height. */
    double width(String text, boolean isBold) {
        double thousandths = text.codePoints()
                .mapToDouble(sign -> widths.computeIfAbsent(isBold ? -sign : sign, any -> width(sign, isBold)))
                .sum();
        return thousandths / 1000;
    }

    private double width(int sign, boolean isBold) {
        String letter = Character.toString(sign);
        for (Face face : faces) {
            boolean isWanted = face.weight() > 400 == isBold || face.family().startsWith("machine");
            try {
                if (isWanted) {
                    return face.font().getStringWidth(letter);
                }
            } catch (IllegalArgumentException | IOException e) {
                // That font has no such sign: the next one is asked.
                continue;
            }
        }
        return 1000;
    }

    /** Signs that no font knows. */
    int missing() {
        return unknown.size();
    }

    /** {@code text} with a box for each sign that no font knows. */
    String legible(String text) {
        if (unknown.isEmpty()) {
            return text;
        }
        StringBuilder legible = new StringBuilder(text.length());
        text.codePoints().forEach(sign -> {
            if (unknown.contains(sign)) {
                legible.append(REPLACEMENT);
            } else {
                legible.appendCodePoint(sign);
            }
        });
        return legible.toString();
    }

    static Set<Integer> known(TrueTypeFont font, Set<Integer> signs) throws IOException {
        CmapLookup glyphs = font.getUnicodeCmapLookup();
        return signs.stream().filter(sign -> glyphs.getGlyphId(sign) != 0).collect(Collectors.toSet());
    }

    private static InputStream resource(String name) {
        return PrintFonts.class.getResourceAsStream(name);
    }

    /** Without ligatures: looking for them takes most of the time of printing, and a name is to be read letter by letter. */
    private static PDFont load(PDDocument pdf, InputStream font) throws IOException {
        try (font) {
            TrueTypeFont parsed = new TTFParser(true).parse(new RandomAccessReadBuffer(font.readAllBytes()));
            parsed.setEnableGsub(false);
            return PDType0Font.load(pdf, parsed, true);
        }
    }
}
