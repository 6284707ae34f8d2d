package evenrise.model.contract;

import java.util.Collection;
import java.util.stream.Collectors;

/** Counts, ids and lists in the words of a message. */
public final class Phrase {
    private Phrase() {}

    /** {@code 1 pole}, {@code 3 poles}. */
    public static String counted(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    public static String quoted(String id) {
        return "'" + id + "'";
    }

    /** Ids in quotes, the first so many by name, the rest counted. */
    public static String quoted(Collection<String> ids, int most) {
        return listed(ids.stream().map(Phrase::quoted).toList(), most);
    }

    /** Words with commas between, the first so many of them, the rest counted. */
    public static String listed(Collection<?> words, int most) {
        String first = words.stream().limit(most).map(String::valueOf).collect(Collectors.joining(", "));
        return words.size() <= most ? first : first + " and " + (words.size() - most) + " more";
    }
}
