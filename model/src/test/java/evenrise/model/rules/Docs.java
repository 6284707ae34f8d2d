package evenrise.model.rules;

import java.nio.file.Path;

/** Where the pages are, seen from the module's folder. */
public final class Docs {
    private Docs() {}

    public static Path page(String name) {
        return Path.of("..", "docs", name);
    }
}
