package evenrise.model.file;

import java.util.Set;
import java.util.regex.Pattern;

/** Writes texts so that they read back as the same text. */
final class Quotes {
    /** Bare words that YAML 1.1 or 1.2 takes for something else. */
    private static final Set<String> TAKEN =
            Set.of("true", "false", "yes", "no", "on", "off", "y", "n", "null", "nan", "inf");

    private static final Pattern PLAIN = Pattern.compile("[A-Za-z][A-Za-z0-9_./-]*( [A-Za-z0-9_./-]+)*");

    private Quotes() {}

    /** Control characters, format characters and unpaired surrogates are escaped; the rest stays as it is. */
    static String json(String text) {
        StringBuilder out = new StringBuilder("\"");
        text.codePoints().forEach(c -> {
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    if (Character.isBmpCodePoint(c) && isHidden(c)) {
                        out.append(String.format("\\u%04x", c));
                    } else {
                        out.appendCodePoint(c);
                    }
                }
            }
        });
        return out.append('"').toString();
    }

    /** Bare where it is safe, else as in JSON, which YAML's double quotes include. */
    static String yaml(String text) {
        boolean plain = PLAIN.matcher(text).matches() && !TAKEN.contains(text.toLowerCase(java.util.Locale.ROOT));
        return plain ? text : json(text);
    }

    private static boolean isHidden(int c) {
        return switch (Character.getType(c)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.UNASSIGNED -> true;
            default -> false;
        };
    }
}
