package evenrise.solver.engine.state;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FewCountsTest {
    @Test
    void countsWhatAnOrdinaryMapCounts() {
        SplittableRandom random = new SplittableRandom(1);
        FewCounts counts = new FewCounts();
        Map<Integer, Integer> ordinary = new HashMap<>();

        for (int i = 0; i < 2_000; i++) {
            int key = random.nextInt(12);
            int sign = ordinary.getOrDefault(key, 0) > 0 && random.nextBoolean() ? -1 : 1;
            int expected = ordinary.merge(key, sign, Integer::sum);

            assertThat(counts.add(key, sign)).isEqualTo(expected);
            assertThat(counts.largest())
                    .isEqualTo(ordinary.values().stream().max(Integer::compare).orElseThrow());
        }
    }
}
