package evenrise.solver.rendering;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.fontbox.util.autodetect.FontFileFinder;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;

/** Fonts of this machine that know what the fonts inside the program do not. */
final class SystemFonts {
    private static final int MOST = 4;

    private SystemFonts() {}

    /** Outline fonts that know some of {@code signs}, in the order of their paths; each adds to those before it. */
    static List<File> knowing(Set<Integer> signs) {
        Set<Integer> missing = new TreeSet<>(signs);
        List<File> found = new ArrayList<>();
        List<File> all = new FontFileFinder()
                .find().stream()
                        .map(SystemFonts::file)
                        .filter(each -> each.getName().toLowerCase(Locale.ROOT).endsWith(".ttf"))
                        .sorted(Comparator.comparing(File::getPath))
                        .toList();
        for (File file : all) {
            if (missing.isEmpty() || found.size() == MOST) {
                return found;
            }
            if (missing.removeAll(known(file, missing))) {
                found.add(file);
            }
        }
        return found;
    }

    /** Which of {@code signs} a font draws; none where it cannot be read, or may not or cannot be put into a document. */
    static Set<Integer> known(File file, Set<Integer> signs) {
        try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBufferedFile(file))) {
            return isEmbeddable(font) ? PrintFonts.known(font, signs) : Set.of();
        } catch (IOException | RuntimeException e) {
            // Other people's files: one that is broken is one font less.
            return Set.of();
        }
    }

    /** By the licence bits of OpenType's OS/2 table: bit 1 alone forbids, bit 9 asks for bitmaps only. */
    private static boolean isEmbeddable(TrueTypeFont font) throws IOException {
        int bits = font.getOS2Windows() == null ? 0 : font.getOS2Windows().getFsType();
        return font.getTableMap().containsKey("glyf") && (bits & 0x000f) != 0x0002 && (bits & 0x0200) == 0;
    }

    private static File file(URI uri) {
        return new File(uri);
    }
}
