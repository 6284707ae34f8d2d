package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Beside the same with an object for each number. */
class FlatLinesTest {
    private final Random random = new Random(7);

    private LineMatrix matrix() {
        return LineMatrix.of((row, column) -> phasor());
    }

    private Phasor phasor() {
        return new Phasor(random.nextGaussian(), random.nextGaussian());
    }

    private static void same(double[] flat, int from, LineMatrix matrix) {
        double[] expected = FlatLines.of(matrix);
        for (int i = 0; i < expected.length; i++) {
            assertThat(flat[from + i]).isCloseTo(expected[i], within(1e-9));
        }
    }

    @Test
    void multipliesMatrices() {
        LineMatrix left = matrix();
        LineMatrix right = matrix();
        double[] into = new double[20];

        FlatLines.product(FlatLines.of(left), 0, FlatLines.of(right), 0, into, 2);

        same(into, 2, left.times(right));
    }

    @Test
    void invertsAMatrix() {
        LineMatrix matrix = matrix();
        double[] into = new double[20];

        FlatLines.invert(FlatLines.of(matrix), into, 2);

        same(into, 2, matrix.inverse());
    }

    @Test
    void appliesAMatrixToValues() {
        LineMatrix matrix = matrix();
        LineValues values = new LineValues(phasor(), phasor(), phasor());
        double[] into = new double[8];

        FlatLines.apply(FlatLines.of(matrix), 0, FlatLines.of(values), 0, into, 2);

        double[] expected = FlatLines.of(matrix.times(values));
        for (int i = 0; i < expected.length; i++) {
            assertThat(into[2 + i]).isCloseTo(expected[i], within(1e-12));
        }
        assertThat(FlatLines.values(into, 2).c().real()).isEqualTo(into[6]);
    }
}
