package evenrise.model.plan;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Makes the text of a finding from its parts; nowhere else is a statement joined with its cure. */
public final class FindingText {
    private static final Pattern GAP = Pattern.compile("\\{([a-z]+)}");

    private FindingText() {}

    /** {@code load 'A' does not fit. Maybe move it.}: a statement without its full stop, and a cure, which may be empty. */
    public static String of(String statement, String cure) {
        return statement + "." + (cure.isEmpty() ? "" : " Maybe " + cure + ".");
    }

    /**
     * The pattern with a word in the place of each {@code {name}}.
     *
     * @throws IllegalArgumentException where there is no such word
     */
    public static String filled(String pattern, Map<String, String> words) {
        Matcher gap = GAP.matcher(pattern);
        return gap.replaceAll(found -> {
            String word = words.get(found.group(1));
            if (word == null) {
                throw new IllegalArgumentException("no word for " + found.group() + " in: " + pattern);
            }
            return Matcher.quoteReplacement(word);
        });
    }
}
