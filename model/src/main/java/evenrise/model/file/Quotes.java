package evenrise.model.file;

import evenrise.model.contract.Signs;
import java.util.Locale;
import java.util.Set;

/** Writes texts so that they read back as the same text. */
final class Quotes {
    /** Bare words that YAML 1.1 or 1.2 takes for something else. */
    private static final Set<String> TAKEN =
            Set.of("true", "false", "yes", "no", "on", "off", "y", "n", "null", "nan", "inf");

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
                    if (Character.isBmpCodePoint(c) && Signs.isHidden(c)) {
                        out.append(String.format(Locale.ROOT, "\\u%04x", c));
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
        boolean plain = isPlain(text) && !TAKEN.contains(text.toLowerCase(Locale.ROOT));
        return plain ? text : json(text);
    }

    /** Words of plain letters, digits and a few marks, one space between two; it begins with a letter. */
    private static boolean isPlain(String text) {
        boolean begins = !text.isEmpty() && text.charAt(0) < 128 && Character.isLetter(text.charAt(0));
        return begins
                && !text.endsWith(" ")
                && !text.contains("  ")
                && text.chars().allMatch(c -> c < 128 && (Character.isLetterOrDigit(c) || " _./-".indexOf(c) >= 0));
    }
}
