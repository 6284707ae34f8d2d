package evenrise.solver.exhaustive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

class FailedStatesTest {
    private static final long[] ROW = {7, 1, 3};

    private final FailedStates failed = new FailedStates();

    @Test
    void coverWhatIsAsHardOrHarder() {
        failed.add(ROW, 3, new double[] {-100, -4, 2.5});

        assertThat(failed.covers(ROW, 3, new double[] {-100, -4, 2.5})).isTrue();
        assertThat(failed.covers(ROW, 3, new double[] {-99, -3, 2.6})).isTrue();
        assertThat(failed.covers(ROW, 3, new double[] {-100, -4, 2.5, 1}))
                .as("more rings later")
                .isTrue();
    }

    @Test
    void doNotCoverWhatIsEasierInAnyPart() {
        failed.add(ROW, 3, new double[] {-100, -4, 2.5});

        assertThat(failed.covers(ROW, 3, new double[] {-101, -4, 2.5})).isFalse();
        assertThat(failed.covers(ROW, 3, new double[] {-100, -5, 2.5})).isFalse();
        assertThat(failed.covers(ROW, 3, new double[] {-100, -4, 2.4})).isFalse();
        assertThat(failed.covers(ROW, 3, new double[] {-100, -4}))
                .as("nothing rings any more")
                .isFalse();
    }

    @Test
    void doNotCoverAnotherRow() {
        failed.add(ROW, 3, new double[] {-100, -4});

        assertThat(failed.covers(new long[] {7, 1, 4}, 3, new double[] {0, 0})).isFalse();
        assertThat(failed.covers(ROW, 2, new double[] {0, 0})).as("shorter").isFalse();
        assertThat(failed.covers(new long[] {7, 1, 3, 0}, 4, new double[] {0, 0}))
                .as("longer")
                .isFalse();
    }

    @Test
    void keepEveryFailureOfARow() {
        failed.add(ROW, 3, new double[] {-100, -4});
        failed.add(ROW, 3, new double[] {-90, -6});

        assertThat(failed.covers(ROW, 3, new double[] {-100, -4})).isTrue();
        assertThat(failed.covers(ROW, 3, new double[] {-90, -6})).isTrue();
        assertThat(failed.covers(ROW, 3, new double[] {-100, -6})).isFalse();
        assertThat(failed.size()).isEqualTo(1);
    }

    @Test
    void findEachOfManyRowsAgainAndNoOther() {
        Random random = new Random(1);
        long[][] rows = random.longs(30_000)
                .mapToObj(number -> new long[] {number & 0xFFF, number >>> 52, number >>> 20 & 0xFF})
                .toArray(long[][]::new);
        for (int i = 0; i < rows.length; i += 2) {
            failed.add(rows[i], 3, new double[] {i});
        }

        for (int i = 0; i < rows.length; i += 2) {
            assertThat(failed.covers(rows[i], 3, new double[] {i})).isTrue();
        }
        assertThat(failed.covers(new long[] {-1, 0, 0}, 3, new double[] {1e9})).isFalse();
    }

    @Test
    void forgetAllOnceTheyAreTooMany() {
        double[] figures = new double[1 << 20];
        for (int i = 0; i < 6; i++) {
            failed.add(new long[] {i}, 1, figures);
        }

        assertThat(failed.size()).isLessThan(6);
        assertThat(failed.covers(new long[] {5}, 1, figures)).isTrue();
        assertThat(failed.covers(new long[] {0}, 1, figures)).isFalse();
    }
}
