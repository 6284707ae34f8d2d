package evenrise.solver.report;

import java.lang.Character.UnicodeScript;

/**
 * Columns that text takes on a screen of fixed pitch: two for the wide East Asian scripts and pictographs, none for
 * combining marks, one for the rest. An approximation of Unicode Standard Annex 11; terminals differ at its edges.
 */
public final class DisplayWidth {
    private static final String CUT_MARK = "...";

    private DisplayWidth() {}

    public static int of(String text) {
        return text.codePoints().map(DisplayWidth::of).sum();
    }

    /** The text, or as much of its start as fits {@code widest} columns with a mark that says so. */
    public static String cut(String text, int widest) {
        if (of(text) <= widest) {
            return text;
        }
        StringBuilder kept = new StringBuilder();
        int width = Math.min(CUT_MARK.length(), widest);
        for (int c : text.codePoints().toArray()) {
            width += of(c);
            if (width > widest) {
                break;
            }
            kept.appendCodePoint(c);
        }
        return kept + CUT_MARK.substring(0, Math.min(CUT_MARK.length(), widest));
    }

    private static int of(int codePoint) {
        int type = Character.getType(codePoint);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
            return 0;
        }
        return isWide(codePoint) ? 2 : 1;
    }

    private static boolean isWide(int codePoint) {
        if (codePoint < 0x1100) {
            return false;
        }
        boolean fullWidthForm =
                codePoint >= 0xFF01 && codePoint <= 0xFF60 || codePoint >= 0xFFE0 && codePoint <= 0xFFE6;
        boolean ideographicMark = codePoint >= 0x3000 && codePoint <= 0x303E;
        boolean pictograph = codePoint >= 0x1F300 && codePoint <= 0x1FAFF;
        UnicodeScript script = UnicodeScript.of(codePoint);
        boolean wideScript = script == UnicodeScript.HAN
                || script == UnicodeScript.HIRAGANA
                || script == UnicodeScript.KATAKANA
                || script == UnicodeScript.HANGUL;
        boolean halfWidthForm = codePoint >= 0xFF61 && codePoint <= 0xFFDC;
        return fullWidthForm || ideographicMark || pictograph || wideScript && !halfWidthForm;
    }
}
