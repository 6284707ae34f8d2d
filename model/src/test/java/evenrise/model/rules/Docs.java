package evenrise.model.rules;

import evenrise.model.contract.Words;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Where the pages are, seen from the module's folder. */
public final class Docs {
    private Docs() {}

    public static Path page(String name) {
        return Path.of("..", "docs", name);
    }

    /** Words of the kinds that break a rule. */
    static List<String> kindsOf(String rule) {
        return Arrays.stream(BrokenKind.values())
                .filter(kind -> kind.rule().equals(rule))
                .map(Words::word)
                .toList();
    }
}
