package evenrise.model.check;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that a wrong one was probably meant to be. */
public final class Nearest {
    private Nearest() {}

    /** The closest of {@code known}, if it is within a third of the length; letter case counts for nothing. */
    public static Optional<String> to(String wrong, Collection<String> known) {
        if (wrong.length() > 200) {
            return Optional.empty();
        }
        String sought = wrong.toLowerCase(Locale.ROOT);
        int best = Math.max(1, wrong.length() / 3) + 1;
        String found = null;
        for (String candidate : known) {
            if (Math.abs(candidate.length() - wrong.length()) < best) {
                int distance = distance(sought, candidate.toLowerCase(Locale.ROOT), best);
                if (distance < best) {
                    best = distance;
                    found = candidate;
                }
            }
        }
        return Optional.ofNullable(found);
    }

    /** A cure that names the closest of {@code known}, else {@code otherwise}. */
    public static String cure(String wrong, Collection<String> known, String otherwise) {
        return to(wrong, known).map(name -> "Maybe " + Shown.quoted(name) + ".").orElse(otherwise);
    }

    /**
     * Fewest insertions, deletions, replacements and swaps of neighbours (restricted Damerau-Levenshtein distance), or
     * {@code limit} where it is at least that.
     */
    static int distance(String a, String b, int limit) {
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            int least = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                row[j] = Math.min(last[j - 1] + change, 1 + Math.min(last[j], row[j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
                least = Math.min(least, row[j]);
            }
            if (least >= limit) {
                return limit;
            }
            int[] free = beforeLast;
            beforeLast = last;
            last = row;
            row = free;
        }
        return Math.min(limit, last[b.length()]);
    }
}
