package evenrise.solver.bounds;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;

/**
 * Dual feasible functions: whatever fits a capacity together still does after each size is replaced by its image, so sums
 * of images bound packings better than sums of sizes. Both families are those of Fekete and Schepers 2001 (New classes of
 * fast lower bounds for bin packing problems, Mathematical Programming 91:11–31; from memory).
 */
public final class DualFeasible {
    private static final int STAIRS = 6;
    private static final int THRESHOLDS = 12;
    private static final double ROUNDING = 1e-12;

    private DualFeasible() {}

    /** Functions for sizes up to {@code capacity}, the identity first. */
    static List<DoubleUnaryOperator> functions(double capacity, double[] sizes) {
        List<DoubleUnaryOperator> functions = new ArrayList<>();
        functions.add(size -> size);
        for (int k = 1; k <= STAIRS; k++) {
            functions.add(stairs(k, capacity));
        }
        double[] small = DoubleStream.of(sizes)
                .filter(size -> size > 0 && size <= capacity / 2)
                .sorted()
                .distinct()
                .toArray();
        for (int i = 0; i < Math.min(THRESHOLDS, small.length); i++) {
            functions.add(threshold(small[i * small.length / Math.min(THRESHOLDS, small.length)], capacity));
        }
        return functions;
    }

    /**
     * How many bins of a capacity there are at least.
     *
     * @return 0 where one of the sizes is beyond it, or nothing is packed
     */
    public static int leastBins(double capacity, double[] sizes) {
        double room = capacity * (1 + 1e-9);
        if (room <= 0 || DoubleStream.of(sizes).anyMatch(size -> size > room)) {
            return 0;
        }
        return functions(room, sizes).stream()
                .mapToInt(function ->
                        (int) Math.ceil(DoubleStream.of(sizes).map(function).sum() / room - sizes.length * ROUNDING))
                .max()
                .orElse(0);
    }

    /** Rounds to stairs: of a size in (n, n + 1] parts of 1/(k + 1), n are counted, as 1/k each. Never above u⁽ᵏ⁾. */
    private static DoubleUnaryOperator stairs(int k, double capacity) {
        return size -> Math.max(0, Math.floor((k + 1) * size / capacity - ROUNDING)) * capacity / k;
    }

    /** A size that leaves less than {@code least} counts as all, one below {@code least} as nothing. */
    private static DoubleUnaryOperator threshold(double least, double capacity) {
        return size -> size > capacity - least ? capacity : size >= least ? size : 0;
    }
}
