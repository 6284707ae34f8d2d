package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnyDecayTest {
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.5, 1, 1.5, 2, 4, 8, 16, 40, 200})
    void noFormOfADecayLeavesMore(double halves) {
        double exponential = Math.pow(2, -halves);
        double shoulder = (1 + Math.exp(-3)) / (1 + Math.exp(3 * (halves - 1)));
        double twoParts = 0.7 * Math.pow(2, -1.4 * halves) + 0.3 * Math.pow(2, -0.35 * halves);
        double tail = Math.pow(1 + (Math.sqrt(2) - 1) * halves, -2);

        assertThat(AnyDecay.left(halves)).isGreaterThanOrEqualTo(exponential - 1e-12);
        assertThat(AnyDecay.left(halves)).isGreaterThanOrEqualTo(shoulder - 1e-12);
        assertThat(AnyDecay.left(halves)).isGreaterThanOrEqualTo(tail - 1e-12);
        assertThat(AnyDecay.left(halves)).isGreaterThanOrEqualTo(twoParts - 1e-12);
    }
}
