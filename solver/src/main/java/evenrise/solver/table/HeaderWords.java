package evenrise.solver.table;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What is left of a header, or of any words, when it does not matter how they are written. */
public final class HeaderWords {
    private static final Pattern UNIT = Pattern.compile("[(\\[]\\s*([\\p{L}%]+)\\s*[)\\]]");

    private HeaderWords() {}

    /** Lower case without accents, units in brackets and punctuation. */
    public static String plain(String header) {
        String bare = header.replaceAll("[(\\[][^(\\[)\\]]*+[)\\]]", " ");
        return words(bare.isBlank() ? header : bare);
    }

    /** Lower case without accents and punctuation. */
    public static String words(String text) {
        return folded(text).replaceAll("[^\\p{L}\\p{N}/'φ]+", " ").strip();
    }

    /** Lower case without accents. */
    public static String folded(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT);
    }

    /** The unit in brackets, lower case. */
    public static Optional<String> unit(String header) {
        Matcher brackets = UNIT.matcher(header);
        return brackets.find() ? Optional.of(brackets.group(1).toLowerCase(Locale.ROOT)) : Optional.empty();
    }
}
