package evenrise.solver.desk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a window is made of: page, style and scripts, out of the jar and from nowhere else. */
final class DeskFace {
    private static final String FOLDER = "/evenrise/desk/";
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml");
    private static final String[] NAMES = {
        "index.html",
        "desk.css",
        "desk.js",
        "views.js",
        "wire.js",
        "parts.js",
        "sheet.js",
        "panels.js",
        "boards.js",
        "lanes.js",
        "search.js",
        "answers.js",
        "branches.js",
        "hand.js",
        "intake.js",
        "suppose.js",
        "form.js",
        "tree.js",
        "mark.svg"
    };

    /** A file as it is sent. */
    record Piece(String type, byte[] bytes) {}

    private final Map<String, Piece> pieces = new LinkedHashMap<>();

    DeskFace() {
        for (String name : NAMES) {
            pieces.put("/" + name, new Piece(TYPES.get(name.substring(name.lastIndexOf('.') + 1)), bytes(name)));
        }
        pieces.put("/", pieces.get("/index.html"));
    }

    Optional<Piece> piece(String path) {
        return Optional.ofNullable(pieces.get(path));
    }

    private static byte[] bytes(String name) {
        try (InputStream in = DeskFace.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is not in the jar");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
