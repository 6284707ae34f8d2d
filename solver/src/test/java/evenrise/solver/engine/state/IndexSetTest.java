package evenrise.solver.engine.state;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class IndexSetTest {
    private static Set<Integer> members(IndexSet set) {
        return new HashSet<>(IntStream.range(0, set.size()).mapToObj(set::get).toList());
    }

    @Test
    void holdsWhatAnOrdinarySetHolds() {
        SplittableRandom random = new SplittableRandom(1);
        IndexSet set = new IndexSet(20);
        Set<Integer> ordinary = new HashSet<>();

        for (int i = 0; i < 2_000; i++) {
            int member = random.nextInt(20);
            boolean isIn = random.nextBoolean();
            set.set(member, isIn);
            if (isIn) {
                ordinary.add(member);
            } else {
                ordinary.remove(member);
            }

            assertThat(set.size()).isEqualTo(ordinary.size());
            assertThat(members(set)).isEqualTo(ordinary);
        }
    }
}
