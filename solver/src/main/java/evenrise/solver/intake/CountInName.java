package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How many pieces a name speaks of, in lists without a column for that: {@code 4 lamps}, {@code lamps x 4}, {@code lamps (4)}. */
final class CountInName {
    /** A figure before these says what a piece is like. */
    private static final String PROPERTY =
            "(?!(?:k?va|k?w|watts?|a|amps?|hp|v|volts?|ch|channels?|ways?|ports?|inch(?:es)?|in|ft|feet|m|mm|cm"
                    + "|kg|lbs?|t|tons?|pins?|poles?|phases?|ph|u|ru|hz|k|kanal|kanale|canaux|fach|zoll|inputs?|outputs?|outlets?)\\b)";

    private static final Pattern FIRST =
            Pattern.compile("([1-9][0-9]{0,2})\\s+(?:[x×]\\s+)?" + PROPERTY + "\\p{L}{2,}.*");
    private static final Pattern TIMES_FIRST = Pattern.compile("([1-9][0-9]{0,2})\\s?[x×]\\s+\\p{L}{2,}.*");
    private static final Pattern LAST =
            Pattern.compile(".*(?:\\s[x×]\\s?|\\()([1-9][0-9]{0,2})(?:\\s?(?:off|pcs|st|stk))?\\)?");

    private static final int LONGEST = 120;

    private CountInName() {}

    static OptionalInt of(String name) {
        String folded = HeaderWords.folded(name).strip();
        if (folded.length() <= LONGEST) {
            for (Pattern pattern : new Pattern[] {FIRST, TIMES_FIRST, LAST}) {
                Matcher matcher = pattern.matcher(folded);
                if (matcher.matches()) {
                    return OptionalInt.of(Integer.parseInt(matcher.group(1)));
                }
            }
        }
        return OptionalInt.empty();
    }
}
