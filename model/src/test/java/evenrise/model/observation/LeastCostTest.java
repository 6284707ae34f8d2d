package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class LeastCostTest {
    @Test
    void isTheLeastOfAllAssignments() {
        Random chance = new Random(1);
        for (int trial = 0; trial < 200; trial++) {
            int rows = 1 + chance.nextInt(5);
            int columns = rows + chance.nextInt(3);
            double[][] costs = new double[rows][columns];
            Arrays.stream(costs).forEach(row -> Arrays.setAll(row, any -> chance.nextInt(20) - 5));

            int[] found = LeastCost.columns(costs);

            double sum = 0;
            for (int i = 0; i < rows; i++) {
                sum += costs[i][found[i]];
            }
            assertThat(Arrays.stream(found).distinct().count()).isEqualTo(rows);
            assertThat(sum).isCloseTo(least(costs, 0, new boolean[columns]), within(1e-9));
        }
    }

    private static double least(double[][] costs, int row, boolean[] taken) {
        if (row == costs.length) {
            return 0;
        }
        double least = Double.POSITIVE_INFINITY;
        for (int j = 0; j < taken.length; j++) {
            if (!taken[j]) {
                taken[j] = true;
                least = Math.min(least, costs[row][j] + least(costs, row + 1, taken));
                taken[j] = false;
            }
        }
        return least;
    }

    @Test
    void needsAColumnForEachRow() {
        assertThatThrownBy(() -> LeastCost.columns(new double[][] {{1}, {2}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("2 rows for 1 columns");
    }
}
