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
        Plant plant = new Plant(Sample.venue(3, 8));
        Situation situation = FirstPlan.build(plant);
        SplittableRandom random = new SplittableRandom(1);
        int most = 0;

        for (int change = 0; change < 2_000; change++) {
            int load = random.nextInt(plant.loadCount());
            situation.place(
                    load, random.nextInt(4) == 0 ? null : plant.places.get(random.nextInt(plant.places.size())));
            if (plant.switched[load]) {
                situation.wire(load, plant.outputs.get(random.nextInt(plant.outputs.size())));
            }
            situation.settle();

            TreeSet<Integer> told = new TreeSet<>();
            IndexSet broken = situation.pairs().broken();
            IntStream.range(0, broken.size()).forEach(i -> told.add(broken.get(i)));
            assertThat(told)
                    .containsExactlyElementsOf(IntStream.range(0, plant.pairs.kind.length)
                            .filter(pair -> situation.pairs().chargeOf(pair) > 0)
                            .boxed()
                            .toList());
            most = Math.max(most, broken.size());
        }
        assertThat(most).as("pairs broken at once").isGreaterThan(10);
    }
}
