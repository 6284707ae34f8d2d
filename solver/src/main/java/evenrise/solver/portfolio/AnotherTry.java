package evenrise.solver.portfolio;

import java.util.List;
import java.util.OptionalDouble;

/** What one more search may bring, from what searches of the same kind have come to. */
public final class AnotherTry {
    /** Fewer say too little. */
    public static final int FEWEST = 5;

    private AnotherTry() {}

    /**
     * By how much another try is expected to lower the least value, at most and on average.
     *
     * <p>Of n tries of equal chances, leave one out, each in turn: the least of the others is the second where the best was
     * left out, and the best else. So (second − best)/n is on average what the last of n tries has brought, whatever their
     * distribution; and what the next one brings is no more, since the expected least of n tries falls ever more slowly.
     *
     * @param values what tries by other seeds, as long as each other, have come to
     * @return empty of fewer than {@link #FEWEST}
     */
    public static OptionalDouble gain(List<Double> values) {
        if (values.size() < FEWEST) {
            return OptionalDouble.empty();
        }
        List<Double> sorted = values.stream().sorted().toList();
        return OptionalDouble.of((sorted.get(1) - sorted.get(0)) / sorted.size());
    }
}
