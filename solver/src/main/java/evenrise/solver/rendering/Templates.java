package evenrise.solver.rendering;

import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.ClasspathLoader;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** Fills the templates; every value is escaped for HTML unless the template says otherwise. */
final class Templates {
    private static final String FOLDER = "evenrise/rendering";
    /** No document can hold these, and print refuses the whole of it for one. */
    private static final Pattern NOT_OF_XML =
            Pattern.compile("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\ufffe\\uffff]|[\\ud800-\\udbff](?![\\udc00-\\udfff])"
                    + "|(?<![\\ud800-\\udbff])[\\udc00-\\udfff]");

    private static final PebbleEngine ENGINE = engine();

    private Templates() {}

    static String fill(String name, Map<String, Object> values) {
        StringWriter text = new StringWriter();
        try {
            ENGINE.getTemplate(name).evaluate(text, values, Locale.ROOT);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return NOT_OF_XML.matcher(text.toString()).replaceAll("?");
    }

    /** A part that holds nothing to fill in. */
    static String text(String name) {
        try (InputStream in = Templates.class.getClassLoader().getResourceAsStream(FOLDER + "/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static PebbleEngine engine() {
        ClasspathLoader loader = new ClasspathLoader(Templates.class.getClassLoader());
        loader.setPrefix(FOLDER);
        return new PebbleEngine.Builder()
                .loader(loader)
                .strictVariables(true)
                .extension(new PlainFilter())
                .build();
    }
}
