package evenrise.model.measured;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class MeterTest {
    @Test
    void ofAClassIsOffByAPartOfItsRange() {
        // IEC 60051-1: the class index is the limit of error, in percent of the upper limit of the range (from memory)
        Meter meter = new Meter("M", OptionalDouble.of(100), 2, 0, 0, 1, Optional.empty(), Optional.empty());

        assertThat(meter.errorAmps(5)).isCloseTo(2, within(1e-12));
        assertThat(meter.isOverRange(100)).isFalse();
        assertThat(meter.isOverRange(100.1)).isTrue();
    }

    @Test
    void ofWhichNothingIsKnownIsOffByThreePercentAndALittle() {
        assertThat(Meter.usual("").errorAmps(10)).isCloseTo(0.35, within(1e-12));
    }
}
