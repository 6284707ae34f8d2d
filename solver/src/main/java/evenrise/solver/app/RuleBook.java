package evenrise.solver.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The paragraphs of docs/rules.md, which is packed with the program: a rule's text is written in one place. */
final class RuleBook {
    private static final String PAGE = "rules.md";
    private static final String HEADING = "## ";

    private RuleBook() {}

    /** Ids of the rules, in the order of the page. */
    static List<String> rules() {
        return List.copyOf(paragraphs().keySet());
    }

    /** What the page says of a rule, without marks of its format; empty where there is no such rule. */
    static Optional<String> paragraph(String rule) {
        return Optional.ofNullable(paragraphs().get(rule));
    }

    private static Map<String, String> paragraphs() {
        Map<String, String> paragraphs = new LinkedHashMap<>();
        String rule = "";
        for (String line : page().lines().toList()) {
            if (line.startsWith(HEADING)) {
                rule = line.substring(HEADING.length()).strip();
            } else if (!rule.isEmpty() && !line.isBlank()) {
                paragraphs.merge(rule, plain(line), (before, next) -> before + " " + next);
            }
        }
        return paragraphs;
    }

    /** Links keep their words, code and stress lose their marks. */
    private static String plain(String line) {
        return line.replaceAll("\\[([^\\]]*)\\]\\([^)]*\\)", "$1")
                .replace("`", "")
                .replaceAll("(?<!\\w)\\*([^*]+)\\*", "$1");
    }

    private static String page() {
        try (InputStream in = RuleBook.class.getResourceAsStream(PAGE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
