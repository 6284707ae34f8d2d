package evenrise.solver.report;

import evenrise.model.contract.Signs;

/**
 * Makes text from a file fit for a screen. Names come from outside: a terminal escape in one could hide a line, a
 * bidirectional mark could turn figures round, a line break could forge a row.
 */
public final class Sanitizer {
    /** Stands where a character was that must not reach the screen. */
    static final char SUBSTITUTE = '?';

    private static final int MOST_MARKS_IN_A_ROW = 4;

    private Sanitizer() {}

    /** The text in one line of visible characters; each character that could act on a terminal becomes a {@code ?}. */
    public static String clean(String text) {
        if (isPlain(text)) {
            return text;
        }
        StringBuilder clean = new StringBuilder(text.length());
        int[] marks = {0};
        text.codePoints().forEach(c -> {
            marks[0] = isCombining(c) ? marks[0] + 1 : 0;
            if (marks[0] <= MOST_MARKS_IN_A_ROW) {
                clean.appendCodePoint(Signs.isHidden(c) ? SUBSTITUTE : c);
            }
        });
        return clean.toString();
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
}
