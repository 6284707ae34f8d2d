package evenrise.model.check;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Load;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Loads that must all be apart from each other find panels of their own. Necessary: they sit in different panels, each in one
 * of its candidates, which is a matching. The sets tried are grown greedily from each pair, so not every conflict is seen.
 */
final class PanelsToKeepApart {
    private PanelsToKeepApart() {}

    static void check(Candidates candidates, Consumer<Objection> found) {
        Map<String, Set<String>> apart = new HashMap<>();
        Map<String, Load> placeable = new java.util.LinkedHashMap<>();
        candidates.placeable().forEach(load -> placeable.put(load.id(), load));
        for (Load load : placeable.values()) {
            for (String other : load.apartFrom()) {
                if (placeable.containsKey(other) && !other.equals(load.id())) {
                    apart.computeIfAbsent(load.id(), key -> new LinkedHashSet<>())
                            .add(other);
                    apart.computeIfAbsent(other, key -> new LinkedHashSet<>()).add(load.id());
                }
            }
        }
        Set<String> said = new HashSet<>();
        for (Load load : placeable.values()) {
            for (String other : apart.getOrDefault(load.id(), Set.of())) {
                List<String> clique = grow(load.id(), other, apart);
                int missing = Collections.disjoint(said, clique) ? missing(clique, candidates) : 0;
                if (missing > 0) {
                    said.addAll(clique);
                    report(load, clique, missing, candidates, found);
                }
            }
        }
    }

    private static List<String> grow(String first, String second, Map<String, Set<String>> apart) {
        List<String> clique = new ArrayList<>(List.of(first, second));
        for (String next : apart.get(first)) {
            if (!clique.contains(next) && apart.get(next).containsAll(clique)) {
                clique.add(next);
            }
        }
        return clique;
    }

    /** Loads that find no panel of their own. */
    private static int missing(List<String> clique, Candidates candidates) {
        int[] once = new int[candidates.panels.size()];
        java.util.Arrays.fill(once, 1);
        List<BitSet> ways = clique.stream().map(candidates.ofLoad::get).toList();
        return new Flow(Collections.nCopies(clique.size(), 1), ways, once).left();
    }

    private static void report(
            Load load, List<String> clique, int missing, Candidates candidates, Consumer<Objection> found) {
        BitSet panels = new BitSet();
        Function<String, BitSet> of = candidates.ofLoad::get;
        clique.stream().map(of).forEach(panels::or);
        found.accept(Objection.impossible(
                candidates.parts.pointer(load) + "/apart_from",
                "more than the panels allow: " + Shown.quoted(clique)
                        + " must sit in different panels, and can only sit in " + candidates.names(panels),
                "a panel of its own for each",
                Phrase.counted(missing, "panel") + " missing. Maybe allow other panels for one of them."));
    }
}
