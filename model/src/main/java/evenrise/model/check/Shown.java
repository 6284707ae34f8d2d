package evenrise.model.check;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import java.util.List;

/** Puts values from a file into a message: short, quoted, and without characters that could steer a terminal. */
public final class Shown {
    private static final int LONGEST = 60;
    private static final int MOST_LISTED = 5;

    private Shown() {}

    /** {@code 'SUB-3'}. */
    public static String quoted(String text) {
        return Phrase.quoted(plain(text));
    }

    /** {@code 'P1', 'P2'}; what is beyond the first few is only counted. */
    public static String quoted(List<String> texts) {
        return Phrase.listed(texts.stream().map(Shown::quoted).toList(), MOST_LISTED);
    }

    /** The text without quotes, short and {@linkplain Harmless#named harmless}. */
    public static String plain(String text) {
        boolean isLong = text.codePointCount(0, text.length()) > LONGEST;
        return isLong
                ? Harmless.named(text.substring(0, text.offsetByCodePoints(0, LONGEST))) + "…"
                : Harmless.named(text);
    }
}
