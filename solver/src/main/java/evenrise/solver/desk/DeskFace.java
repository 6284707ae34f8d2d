package evenrise.solver.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a window is made of: page, style and scripts, out of the jar and from nowhere else. */
final class DeskFace {
    private static final String FOLDER = "/evenrise/desk/";
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml");
    /** Letters alone and one point: no name leads out of the folder. */
    private static final Pattern NAME = Pattern.compile("/([a-z]+\\.(?:html|css|js|svg))");

    /**
     * A file as it is sent.
     *
     * @param policy what a browser may do with it, where that is another than with everything else
     */
    record Piece(String type, byte[] bytes, Optional<String> policy) {
        Piece(String type, byte[] bytes) {
            this(type, bytes, Optional.empty());
        }
    }

    /** Of what is there alone: whoever asks for names that are not fills no memory. */
    private final Map<String, Piece> pieces = new ConcurrentHashMap<>();

    /** Whatever lies in the folder of the jar: a view more is a script more there. */
    Optional<Piece> piece(String path) {
        Matcher name = NAME.matcher(path.equals("/") ? "/index.html" : path);
        return name.matches()
                ? Optional.ofNullable(pieces.computeIfAbsent(name.group(1), DeskFace::read))
                : Optional.empty();
    }

    /** Null where it is not there, which no map keeps. */
    private static Piece read(String name) {
        try (InputStream in = DeskFace.class.getResourceAsStream(FOLDER + name)) {
            return in == null
                    ? null
                    : new Piece(TYPES.get(name.substring(name.lastIndexOf('.') + 1)), in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
