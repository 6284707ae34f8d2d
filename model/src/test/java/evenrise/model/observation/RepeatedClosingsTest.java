package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RepeatedClosingsTest {
    private static final double INTERVAL = 0.02;

    /** By hand: one is 0.1 s late each time, two never; the second start's clock is set 0.03 s late. Nothing scatters. */
    @Test
    void takeWhatComesBackForNoScatter() {
        RepeatedClosings closings = RepeatedClosings.of(
                List.of(Map.of("one", 0.1, "two", 0.0), Map.of("one", 0.13, "two", 0.03)), INTERVAL);

        assertThat(closings.loads()).isEqualTo(2);
        assertThat(closings.degrees()).isEqualTo(1);
        assertThat(closings.deviationSeconds().orElseThrow()).isCloseTo(0, within(1e-9));
    }

    /** By hand: rests are ±0.005 s four times, so 4 · 0.005² over one degree of freedom, whose root is 0.01 s. */
    @Test
    void takeTheRestOverItsDegreesOfFreedom() {
        RepeatedClosings closings = RepeatedClosings.of(
                List.of(Map.of("one", 0.01, "two", 0.0), Map.of("one", 0.0, "two", 0.01)), INTERVAL);

        assertThat(closings.degrees()).isEqualTo(1);
        assertThat(closings.deviationSeconds().orElseThrow()).isCloseTo(0.01, within(1e-9));
    }

    @Test
    void sayNothingOfLoadsThatWereSeenOnce() {
        RepeatedClosings closings = RepeatedClosings.of(List.of(Map.of("one", 0.1), Map.of("two", 0.2)), INTERVAL);

        assertThat(closings.loads()).isZero();
        assertThat(closings.deviationSeconds()).isEmpty();
    }

    /** 40 loads in 6 starts, some not seen: about 180 degrees of freedom, so known to some 5 %. */
    @Test
    void knowTheDeviationThatWasDrawn() {
        for (long seed = 1; seed <= 20; seed++) {
            Random chance = new Random(seed);
            double[] own = chance.doubles(40, -0.2, 0.2).toArray();
            List<Map<String, Double>> late = new ArrayList<>();
            for (int start = 0; start < 6; start++) {
                double clock = chance.nextDouble();
                Map<String, Double> seen = new LinkedHashMap<>();
                for (int load = 0; load < own.length; load++) {
                    double closed = own[load] + clock + 0.03 * chance.nextGaussian();
                    if (chance.nextInt(10) > 0) {
                        seen.put("load-" + load, closed);
                    }
                }
                late.add(seen);
            }

            RepeatedClosings closings = RepeatedClosings.of(late, INTERVAL);

            assertThat(closings.deviationSeconds().orElseThrow())
                    .as("seed %d", seed)
                    .isCloseTo(0.03, within(0.03 * 4 / Math.sqrt(2.0 * closings.degrees())));
        }
    }
}
