package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LeastSquaresTest {
    private static final double[] ONES = {1, 1, 1, 1};

    @Test
    void findsThePartsOfAStraightLine() {
        LeastSquares line = new LeastSquares(new double[][] {ONES.clone(), {0, 1, 2, 3}}, new double[] {5, 7, 9, 11});

        assertThat(line.part(0)).isCloseTo(5, within(1e-12));
        assertThat(line.part(1)).isCloseTo(2, within(1e-12));
        assertThat(line.squares()).isCloseTo(0, within(1e-20));
    }

    /** Variance of a mean is one over the number of values, that of a slope one over the sum of squares about the mean: 5. */
    @Test
    void knowsHowSureTheyAre() {
        LeastSquares mean = new LeastSquares(new double[][] {ONES.clone()}, new double[] {1, 2, 3, 6});
        LeastSquares line = new LeastSquares(new double[][] {ONES.clone(), {0, 1, 2, 3}}, new double[4]);

        assertThat(mean.part(0)).isCloseTo(3, within(1e-12));
        assertThat(mean.variance(0)).isCloseTo(1.0 / 4, within(1e-12));
        assertThat(mean.squares()).isCloseTo(4 + 1 + 0 + 9, within(1e-12));
        assertThat(line.variance(1)).isCloseTo(1.0 / 5, within(1e-12));
    }

    /** What the line reaches at 1 has the variance 1/4 + (1 − 1.5)²/5 = 0.3. */
    @Test
    void knowsHowSureASumOfPartsIs() {
        LeastSquares line = new LeastSquares(new double[][] {ONES.clone(), {0, 1, 2, 3}}, new double[4]);

        assertThat(line.variance(0, 1)).isCloseTo(0.3, within(1e-12));
    }

    @Test
    void saysWhereColumnsAreTheSame() {
        LeastSquares twice = new LeastSquares(new double[][] {ONES.clone(), {2, 2, 2, 2}}, new double[] {1, 2, 3, 4});

        assertThat(twice.isUnique()).isFalse();
    }
}
