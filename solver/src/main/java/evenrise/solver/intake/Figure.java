package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The figure in a cell without what people write around it.
 *
 * @param text the bare figure with its unit; of a range its upper end
 * @param times how often it counts, as in {@code 2 x 500 W}
 * @param isAbout whether the list says that it is not exact: {@code ~10}, {@code ca. 10}, {@code 10?}, {@code 8-10}
 */
record Figure(String text, int times, boolean isAbout) {
    private static final Pattern ABOUT = Pattern.compile(
            "(?:~|≈|±|ca\\b\\.?|circa|approx(?:imately)?\\b\\.?|about|around|est\\b\\.?|estimated|etwa|rund|env\\b\\.?"
                    + "|environ|aprox\\b\\.?|unos)\\s*(.+)",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern ABOUT_BEHIND = Pattern.compile(
            "(.*[0-9\\p{L}])\\s*\\(?(?:\\?+|approx\\.?|est\\.?|tbc|t\\.b\\.c\\.)\\)?", Pattern.CASE_INSENSITIVE);
    private static final Pattern TIMES =
            Pattern.compile("([1-9][0-9]?)\\s*[x×*]\\s*([0-9].*)", Pattern.CASE_INSENSITIVE);
    private static final Pattern RANGE =
            Pattern.compile("[0-9][0-9.,]*\\s*(?:[-–—]|\\.\\.\\.?|…|to|bis|à)\\s*([0-9].*)", Pattern.CASE_INSENSITIVE);

    /** Longer texts are no figures; patterns need not look at them. */
    private static final int LONGEST = 60;

    static Figure of(String written) {
        String text = written.strip();
        if (text.length() > LONGEST) {
            return new Figure(text, 1, false);
        }
        boolean isAbout = false;
        Matcher about = ABOUT.matcher(text);
        if (about.matches() && HeaderWords.folded(about.group(1)).matches("[0-9].*")) {
            text = about.group(1);
            isAbout = true;
        }
        Matcher behind = ABOUT_BEHIND.matcher(text);
        if (behind.matches() && text.matches("[0-9].*")) {
            text = behind.group(1);
            isAbout = true;
        }
        int times = 1;
        Matcher product = TIMES.matcher(text);
        if (product.matches()) {
            times = Integer.parseInt(product.group(1));
            text = product.group(2);
        }
        Matcher range = RANGE.matcher(text);
        if (range.matches()) {
            text = range.group(1);
            isAbout = true;
        }
        return new Figure(text.strip(), times, isAbout);
    }
}
