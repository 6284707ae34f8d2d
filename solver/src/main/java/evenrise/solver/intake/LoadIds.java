package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Ids of loads: the drawings' names, circuits' names, else words of the name and a number. */
final class LoadIds {
    /** Longer ones are cut to the first name and a count. */
    private static final int LONGEST = 40;

    private final Map<String, Integer> numbers = new HashMap<>();
    private final Set<String> taken = new HashSet<>();

    /** The drawings' names where they have any; two of one name are told apart by a number. */
    String of(List<Item> pieces) {
        List<String> tags = pieces.stream()
                .map(piece -> piece.label().tag())
                .filter(tag -> !tag.isEmpty())
                .distinct()
                .toList();
        String joined = String.join("+", tags);
        String circuit = pieces.get(0).circuit().names().written();
        if (tags.isEmpty() && circuit.matches(".*\\p{L}.*[0-9].*") && circuit.length() <= LONGEST) {
            return taken.add(circuit) ? circuit : numbered(circuit);
        }
        String tag = joined.length() <= LONGEST || tags.size() == 1 ? joined : tags.get(0) + "+" + (tags.size() - 1);
        if (tags.isEmpty()) {
            return numbered(slug(pieces.get(0).name()));
        }
        return taken.add(tag) ? tag : numbered(tag);
    }

    private String numbered(String id) {
        String next;
        do {
            next = id + "-" + numbers.merge(id, 1, Integer::sum);
        } while (!taken.add(next));
        return next;
    }

    /** Small letters, figures and hyphens. */
    static String slug(String name) {
        String plain = HeaderWords.plain(name).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        String cut = plain.length() > 24 ? plain.substring(0, 24).replaceAll("-$", "") : plain;
        return cut.isEmpty() ? "load" : cut;
    }
}
