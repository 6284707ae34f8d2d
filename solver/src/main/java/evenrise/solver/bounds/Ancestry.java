package evenrise.solver.bounds;

import evenrise.model.project.Load;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Puts switched loads in an order in which each stands behind those that it comes after. */
final class Ancestry {
    private Ancestry() {}

    /** The switched loads in such an order; what hangs on a circle is left out. Time: loads and relations. */
    static List<Load> ordered(List<Load> all) {
        Map<String, Load> loads = new LinkedHashMap<>();
        all.stream().filter(Load::switched).forEach(load -> loads.put(load.id(), load));
        Map<String, Integer> missing = new HashMap<>();
        Map<String, List<Load>> followers = new HashMap<>();
        Deque<Load> ready = new ArrayDeque<>();
        for (Load load : loads.values()) {
            List<String> before = load.comesAfter().stream()
                    .filter(loads::containsKey)
                    .distinct()
                    .toList();
            missing.put(load.id(), before.size());
            before.forEach(id ->
                    followers.computeIfAbsent(id, key -> new ArrayList<>()).add(load));
            if (before.isEmpty()) {
                ready.add(load);
            }
        }
        List<Load> ordered = new ArrayList<>();
        while (!ready.isEmpty()) {
            Load next = ready.remove();
            ordered.add(next);
            for (Load follower : followers.getOrDefault(next.id(), List.of())) {
                if (missing.merge(follower.id(), -1, Integer::sum) == 0) {
                    ready.add(follower);
                }
            }
        }
        return ordered;
    }
}
