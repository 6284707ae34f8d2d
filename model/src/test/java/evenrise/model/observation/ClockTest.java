package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ClockTest {
    private static double[] plan(int count) {
        return IntStream.range(0, count).mapToDouble(i -> 2.0 * i).toArray();
    }

    @Test
    void goesBothWays() {
        Clock clock = new Clock(100, 1.001);

        assertThat(clock.plan(clock.logger(37.5))).isCloseTo(37.5, within(1e-9));
    }

    /** A fifth of the pairs are wrong by seconds, which a median does not mind. */
    @Test
    void isSetByMostPairs() {
        double[] plan = plan(20);
        double[] logger = IntStream.range(0, 20)
                .mapToDouble(i -> 12 + 1.0004 * plan[i] + (i % 5 == 4 ? 3 : 0))
                .toArray();

        Clock set = new Clock(0, 1).setBy(plan, logger);

        assertThat(set.rate()).isCloseTo(1.0004, within(1e-5));
        assertThat(set.offsetSeconds()).isCloseTo(12, within(0.01));
    }

    @Test
    void takesNoDriftFromFewPairs() {
        Clock set = new Clock(0, 1).setBy(new double[] {0, 10, 20}, new double[] {5, 15.1, 25.2});

        assertThat(set.rate()).isEqualTo(1);
        assertThat(set.offsetSeconds()).isCloseTo(5.1, within(1e-9));
    }

    /** A tenth of a percent and no more. */
    @Test
    void believesNoDriftThatNoLoggerHas() {
        double[] plan = plan(10);
        double[] logger = IntStream.range(0, 10).mapToDouble(i -> 1.2 * plan[i]).toArray();

        assertThat(new Clock(0, 1).setBy(plan, logger).rate()).isCloseTo(1.001, within(1e-12));
    }
}
