package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class AxisTest {
    private static List<String> labels(Axis axis) {
        return axis.ticks().stream().map(axis::label).toList();
    }

    /** At most six steps of 1, 2 or 5 times a power of ten: 1,000 / 6 is 167, the next of those is 200. */
    @Test
    void fromZeroHasRoundTicksUpToTheMost() {
        assertThat(labels(Axis.fromZero(1000))).containsExactly("0", "200", "400", "600", "800", "1000");
        assertThat(labels(Axis.fromZero(33.4))).containsExactly("0", "10", "20", "30");
        assertThat(labels(Axis.fromZero(6))).containsExactly("0", "1", "2", "3", "4", "5", "6");
    }

    /** 0.1 / 6 is 0.017, the next is 0.02: a tick of 0.02 with one decimal would read 0.0. */
    @Test
    void ticksTellThemselvesApart() {
        assertThat(labels(Axis.fromZero(0.1))).containsExactly("0.00", "0.02", "0.04", "0.06", "0.08", "0.10");
        assertThat(labels(Axis.fromZero(2.5))).containsExactly("0.0", "0.5", "1.0", "1.5", "2.0", "2.5");
    }

    /** A span of 100, 5 at each end; 100 · 1.2 / 5 is 24, the next is 50. */
    @Test
    void aroundARangeHasRoomAtBothEnds() {
        Axis axis = Axis.around(210, 310);

        assertThat(labels(axis)).containsExactly("200", "250", "300", "350");
        assertThat(axis.part(200)).isZero();
        assertThat(axis.part(350)).isEqualTo(1);
    }

    @Test
    void aroundOneValueIsARangeNonetheless() {
        Axis axis = Axis.around(500, 500);

        assertThat(axis.steps()).isPositive();
        assertThat(axis.part(500)).isBetween(0.0, 1.0);
    }
}
