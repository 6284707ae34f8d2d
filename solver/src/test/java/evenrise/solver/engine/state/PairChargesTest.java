package evenrise.solver.engine.state;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.sample.Sample;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The search is told which pairs are broken: it must be these and no others, after any change. */
class PairChargesTest {
    @Test
    void knowsExactlyThePairsThatAreCharged() {
        CompiledProject compiled = new CompiledProject(Sample.venue(3, 8));
        PlanSums sums = FirstPlan.build(compiled);
        SplittableRandom random = new SplittableRandom(1);
        int most = 0;

        for (int change = 0; change < 2_000; change++) {
            int load = random.nextInt(compiled.loadCount());
            sums.place(
                    load, random.nextInt(4) == 0 ? null : compiled.places.get(random.nextInt(compiled.places.size())));
            if (compiled.switched[load]) {
                sums.wire(load, compiled.outputs.get(random.nextInt(compiled.outputs.size())));
            }
            sums.settle();

            TreeSet<Integer> told = new TreeSet<>();
            IndexSet broken = sums.pairs().broken();
            IntStream.range(0, broken.size()).forEach(i -> told.add(broken.get(i)));
            assertThat(told)
                    .containsExactlyElementsOf(IntStream.range(0, compiled.pairs.kind.length)
                            .filter(pair -> sums.pairs().chargeOf(pair) > 0)
                            .boxed()
                            .toList());
            most = Math.max(most, broken.size());
        }
        assertThat(most).as("pairs broken at once").isGreaterThan(10);
    }
}
