package evenrise.solver.rendering;

import com.openhtmltopdf.util.XRLog;
import evenrise.solver.document.Document;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.SortedSet;

/** A PDF of sheets without numbers, index and outline: labels. */
final class LooseSheets {
    /** Draws all of them. */
    interface Drawing {
        void draw(LooseSheets sheets) throws IOException;
    }

    private final TaggedFile file;

    private LooseSheets(TaggedFile file) {
        this.file = file;
    }

    /**
     * The finished file.
     *
     * @param title behind the project's name
     * @param language of the text, as a page states it
     * @param signs that are in it; spaces count for nothing
     */
    static byte[] of(Document document, String title, String language, SortedSet<Integer> signs, Drawing drawing) {
        signs.removeIf(Character::isWhitespace);
        XRLog.setLoggingEnabled(false);
        try (TaggedFile file = new TaggedFile(signs)) {
            drawing.draw(new LooseSheets(file));
            new PrintImprint(file, document.imprint(), document.headline(), document.isBroken())
                    .describe(document.imprint().project() + ", " + title, language);
            return file.finished();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    PrintFonts fonts() {
        return file.fonts();
    }

    /** @param paper width and height, as a style sheet writes them */
    void print(String template, Map<String, Object> values, String paper) throws IOException {
        file.add(file.laid(Markup.of(fonts().legible(Templates.fill("print/" + template + ".peb", values))), paper));
    }
}
