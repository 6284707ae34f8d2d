package evenrise.model.observation;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What is otherwise than planned.
 *
 * @param dead loads that do not come on
 * @param free loads of which nothing is known but when they come on
 * @param moved loads that come on at another time of the logger's clock
 * @param unknown moments at which something comes on that no plan knows
 */
record Otherwise(Set<String> dead, Set<String> free, Map<String, Double> moved, Set<Double> unknown) {
    static final Otherwise NOTHING = new Otherwise(Set.of(), Set.of(), Map.of(), Set.of());

    static Otherwise dead(List<String> loads) {
        return new Otherwise(Set.copyOf(loads), Set.of(), Map.of(), Set.of());
    }

    static Otherwise free(List<String> loads) {
        return new Otherwise(Set.of(), Set.copyOf(loads), Map.of(), Set.of());
    }

    static Otherwise unknown(double seconds) {
        return new Otherwise(Set.of(), Set.of(), Map.of(), Set.of(seconds));
    }

    static Otherwise moved(List<String> loads, double seconds) {
        Map<String, Double> moved = new HashMap<>();
        loads.forEach(load -> moved.put(load, seconds));
        return new Otherwise(Set.of(), Set.of(), moved, Set.of());
    }

    Otherwise and(Otherwise other) {
        return new Otherwise(
                both(dead, other.dead), both(free, other.free), both(moved, other.moved), both(unknown, other.unknown));
    }

    private static <T> Set<T> both(Set<T> one, Set<T> other) {
        Set<T> both = new HashSet<>(one);
        both.addAll(other);
        return both;
    }

    private static Map<String, Double> both(Map<String, Double> one, Map<String, Double> other) {
        Map<String, Double> both = new HashMap<>(one);
        both.putAll(other);
        return both;
    }
}
