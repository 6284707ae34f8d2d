package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Signs;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Puts values from a file into a message: short, quoted, and without characters that could steer a terminal. */
public final class Shown {
    private static final int LONGEST = 60;
    private static final int MOST_LISTED = 5;

    private Shown() {}

    /** {@code 'SUB-3'}. */
    public static String quoted(String text) {
        return "'" + plain(text) + "'";
    }

    /** {@code 'P1', 'P2'}; what is beyond the first few is only counted. */
    public static String quoted(List<String> texts) {
        String first = texts.stream().limit(MOST_LISTED).map(Shown::quoted).collect(Collectors.joining(", "));
        return texts.size() <= MOST_LISTED ? first : first + " and " + (texts.size() - MOST_LISTED) + " more";
    }

    /** The text without quotes, short and {@link #safe}. */
    public static String plain(String text) {
        boolean isLong = text.codePointCount(0, text.length()) > LONGEST;
        return isLong ? safe(text.substring(0, text.offsetByCodePoints(0, LONGEST))) + "…" : safe(text);
    }

    /** The text in full; signs that are {@linkplain Signs#isHidden hidden} become {@code \}{@code uXXXX}. */
    public static String safe(String text) {
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

    /** At most three decimals, trailing zeros left out. */
    public static String number(double value) {
        return Decimals.toThousandths(value);
    }

    /** A number beside the one that it is held against: as many digits as tell the two apart. */
    static String number(double value, double beside) {
        return Decimals.toThousandths(value, beside);
    }
}
