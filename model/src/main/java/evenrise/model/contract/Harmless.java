package evenrise.model.contract;

import java.util.Locale;
import java.util.stream.Collectors;

/**
 * Makes text from outside fit for where it is shown; every place has its own way here. A terminal escape in a name could hide
 * a line, a bidirectional mark could turn figures round, a line break could forge a row, a quote could end a style sheet's
 * string, a mark could begin a tag.
 */
public final class Harmless {
    /** Stands where a character was that must not reach the screen. */
    static final char SUBSTITUTE = '?';

    private static final int MOST_MARKS_IN_A_ROW = 4;

    private Harmless() {}

    /** The text in one line of visible characters; each that could act on what shows it becomes a {@code ?}. */
    public static String shown(String text) {
        if (isPlain(text)) {
            return text;
        }
        StringBuilder shown = new StringBuilder(text.length());
        int[] marks = {0};
        text.codePoints().forEach(c -> {
            marks[0] = isCombining(c) ? marks[0] + 1 : 0;
            if (marks[0] <= MOST_MARKS_IN_A_ROW) {
                shown.appendCodePoint(Signs.isHidden(c) ? SUBSTITUTE : c);
            }
        });
        return shown.toString();
    }

    /** Most texts are of visible ASCII, and as they should be. */
    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < ' ' || text.charAt(i) > '~') {
                return false;
            }
        }
        return true;
    }

    private static boolean isCombining(int codePoint) {
        int type = Character.getType(codePoint);
        return type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK;
    }

    /** The text in full, for whoever mends it: signs that are {@linkplain Signs#isHidden hidden} become {@code \}{@code uXXXX}. */
    public static String named(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (Signs.isHidden(c)) {
                out.append(String.format(Locale.ROOT, "\\u%04X", c));
            } else {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    /** No more than so many characters, the last an ellipsis where some were left out; none is cut in two. */
    public static String cut(String text, int longest) {
        if (text.length() <= longest) {
            return text;
        }
        int end = Character.isSurrogatePair(text.charAt(longest - 2), text.charAt(longest - 1))
                ? longest - 2
                : longest - 1;
        return text.substring(0, end) + "…";
    }

    /** Between two tags of an SVG, or in an attribute. */
    public static String xml(String text) {
        return shown(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    /** A string in a style sheet, its quotes included: whatever is neither letter, digit nor space goes by its number. */
    public static String css(String text) {
        return text.codePoints()
                .mapToObj(c -> c < 128 && (Character.isLetterOrDigit(c) || c == ' ')
                        ? Character.toString(c)
                        : String.format(Locale.ROOT, "\\%06x ", c))
                .collect(Collectors.joining("", "\"", "\""));
    }

    /** Within the quotes of a style sheet's string whose signs are still to be looked at: none that could end it. */
    public static String withinCss(String text) {
        return text.replaceAll("[\"\\\\]", "");
    }
}
