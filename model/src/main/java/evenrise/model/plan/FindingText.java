package evenrise.model.plan;

import java.util.Map;

/** Makes the text of a finding from its parts; nowhere else is a statement joined with its cure. */
public final class FindingText {
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
        StringBuilder text = new StringBuilder();
        int done = 0;
        for (int open = pattern.indexOf('{'); open >= 0; open = pattern.indexOf('{', done)) {
            int close = pattern.indexOf('}', open);
            String word = words.get(pattern.substring(open + 1, close));
            if (word == null) {
                throw new IllegalArgumentException(
                        "no word for " + pattern.substring(open, close + 1) + " in: " + pattern);
            }
            text.append(pattern, done, open).append(word);
            done = close + 1;
        }
        return text.append(pattern, done, pattern.length()).toString();
    }
}
