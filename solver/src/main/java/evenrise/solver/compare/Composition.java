package evenrise.solver.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/** How many things of each kind make up a number of things, cheapest first. */
final class Composition {
    /** Kinds are few and numbers small; of more ways only so many are looked at, in the kinds' order. */
    private static final int MOST_WAYS = 20_000;

    private Composition() {}

    /**
     * Every way to take {@code number} things of {@code kinds} that is {@code enough}, by price and then by the kinds' order.
     *
     * @return each a list of things, a kind as often as it is taken
     */
    static <T> List<List<T>> of(List<T> kinds, int number, ToDoubleFunction<T> price, Predicate<List<T>> enough) {
        List<List<T>> ways = new ArrayList<>();
        take(kinds, 0, number, new ArrayList<>(), ways);
        return ways.stream()
                .filter(enough)
                .sorted(Comparator.comparingDouble(
                        (List<T> way) -> way.stream().mapToDouble(price).sum()))
                .toList();
    }

    /** Whether so many things of so many kinds can be made up in more ways than are looked at. */
    static boolean isCut(int kinds, int number) {
        double ways = 1;
        for (int i = 1; i < kinds; i++) {
            ways *= (number + i) / (double) i;
        }
        return ways >= MOST_WAYS;
    }

    private static <T> void take(List<T> kinds, int from, int left, List<T> taken, List<List<T>> ways) {
        if (left == 0) {
            ways.add(List.copyOf(taken));
            return;
        }
        for (int kind = from; kind < kinds.size() && ways.size() < MOST_WAYS; kind++) {
            taken.add(kinds.get(kind));
            take(kinds, kind, left - 1, taken, ways);
            taken.remove(taken.size() - 1);
        }
    }
}
