package evenrise.solver.bounds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DualFeasibleTest {
    /** Martello and Toth, Knapsack Problems, 1990, chapter 8: an instance whose sum asks for 3 bins; from memory. */
    @Test
    void seesThatLargeSizesDoNotShareABin() {
        double[] sizes = {70, 60, 50, 33, 33, 33, 11, 7, 3};

        assertThat(Arrays.stream(sizes).sum()).isEqualTo(300);
        assertThat(DualFeasible.leastBins(100, sizes)).isEqualTo(4);
    }

    @Test
    void needsOneBinForEachPairThatFitsExactly() {
        assertThat(DualFeasible.leastBins(1.0, new double[] {0.7, 0.3, 0.6, 0.4, 0.9, 0.1}))
                .isEqualTo(3);
    }

    @Test
    void saysNothingWhereASizeFitsNoBin() {
        assertThat(DualFeasible.leastBins(10, new double[] {11, 1})).isZero();
        assertThat(DualFeasible.leastBins(-1, new double[] {1})).isZero();
    }

    @Test
    void isNeverAboveWhatATryOfEveryPackingNeeds() {
        int sharp = 0;
        for (int seed = 1; seed <= 300; seed++) {
            Random random = new Random(seed);
            double[] sizes = random.doubles(2 + random.nextInt(6), 0.05, 1).toArray();

            int fewest = fewest(sizes, 0, new double[sizes.length], 0);

            assertThat(DualFeasible.leastBins(1, sizes)).as("seed %d", seed).isBetween(1, fewest);
            sharp += DualFeasible.leastBins(1, sizes) == fewest ? 1 : 0;
        }
        assertThat(sharp).as("of 300").isGreaterThan(250);
    }

    private static int fewest(double[] sizes, int next, double[] bins, int used) {
        if (next == sizes.length) {
            return used;
        }
        int fewest = Integer.MAX_VALUE;
        for (int bin = 0; bin <= used; bin++) {
            if (bins[bin] + sizes[next] <= 1) {
                bins[bin] += sizes[next];
                fewest = Math.min(fewest, fewest(sizes, next + 1, bins, Math.max(used, bin + 1)));
                bins[bin] -= sizes[next];
            }
        }
        return fewest;
    }
}
