package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.PhaseSystem;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class LineMatrixTest {
    private static final Offset<Double> EXACTLY = within(1e-12);

    /** A textbook's example of an inverse: of rows 1 2 3, 0 1 4, 5 6 0 it is −24 18 5, 20 −15 −4, −5 4 1. */
    private static final double[][] ROWS = {{1, 2, 3}, {0, 1, 4}, {5, 6, 0}};

    private static final double[][] INVERSE = {{-24, 18, 5}, {20, -15, -4}, {-5, 4, 1}};

    private static LineMatrix of(double[][] rows, double imaginary) {
        return LineMatrix.of((i, j) -> new Phasor(rows[i][j], imaginary * rows[i][j]));
    }

    private static void hold(LineMatrix matrix, double[][] rows, double imaginary) {
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                assertThat(matrix.at(i, j).real()).as(i + " " + j).isCloseTo(rows[i][j], EXACTLY);
                assertThat(matrix.at(i, j).imaginary()).as(i + " " + j).isCloseTo(imaginary * rows[i][j], EXACTLY);
            }
        }
    }

    @Test
    void holdsEachEntryByRowAndColumn() {
        hold(of(ROWS, 2), ROWS, 2);
    }

    @Test
    void isInvertedByCofactors() {
        hold(of(ROWS, 0).inverse(), INVERSE, 0);
    }

    /** One over 1 + j is (1 − j)/2. */
    @Test
    void isInvertedWithItsAngle() {
        LineMatrix inverse = of(ROWS, 1).inverse();

        assertThat(inverse.at(0, 1).real()).isCloseTo(9, EXACTLY);
        assertThat(inverse.at(0, 1).imaginary()).isCloseTo(-9, EXACTLY);
        assertThat(inverse.at(1, 2).real()).isCloseTo(-2, EXACTLY);
    }

    /** 1·1 + 2·2 + 3·3 = 14, 0·1 + 1·2 + 4·3 = 14, 5·1 + 6·2 + 0·3 = 17. */
    @Test
    void timesValuesGoesRowByColumn() {
        LineValues product = of(ROWS, 0).times(new LineValues(new Phasor(1, 0), new Phasor(2, 0), new Phasor(3, 0)));

        assertThat(product.a()).isEqualTo(new Phasor(14, 0));
        assertThat(product.b()).isEqualTo(new Phasor(14, 0));
        assertThat(product.c()).isEqualTo(new Phasor(17, 0));
    }

    @Test
    void timesAFactorTurnsEveryEntry() {
        // j·(1 + 0j) = j
        assertThat(of(ROWS, 0).times(new Phasor(0, 1)).at(0, 2)).isEqualTo(new Phasor(0, 3));
    }

    /** Row 0 by column 1 of the square: 1·2 + 2·1 + 3·6 = 22; row 2 by column 0: 5·1 + 6·0 + 0·5 = 5. */
    @Test
    void timesAMatrixGoesRowByColumn() {
        LineMatrix square = of(ROWS, 0).times(of(ROWS, 0));

        assertThat(square.at(0, 1).real()).isEqualTo(22);
        assertThat(square.at(2, 0).real()).isEqualTo(5);
    }

    @Test
    void couplesTheLinesThatASystemHas() {
        Phasor self = new Phasor(2, 3);
        Phasor mutual = new Phasor(0.5, 1);

        LineMatrix two = LineMatrix.coupled(PhaseSystem.SPLIT_PHASE, self, mutual);
        LineMatrix three = LineMatrix.coupled(PhaseSystem.THREE_PHASE, self, mutual);

        assertThat(two.at(0, 0)).isEqualTo(self);
        assertThat(two.at(1, 1)).isEqualTo(self);
        assertThat(two.at(0, 1)).isEqualTo(mutual);
        assertThat(two.at(2, 2)).isEqualTo(Phasor.ZERO);
        assertThat(two.at(0, 2)).isEqualTo(Phasor.ZERO);
        assertThat(two.at(2, 1)).isEqualTo(Phasor.ZERO);
        assertThat(three.at(2, 2)).isEqualTo(self);
        assertThat(three.at(2, 1)).isEqualTo(mutual);
    }

    @Test
    void plusOneAddsToTheDiagonalAlone() {
        LineMatrix more = of(ROWS, 0).plusIdentity();

        assertThat(more.at(1, 1).real()).isEqualTo(2);
        assertThat(more.at(2, 2).real()).isEqualTo(1);
        assertThat(more.at(2, 1).real()).isEqualTo(6);
    }
}
