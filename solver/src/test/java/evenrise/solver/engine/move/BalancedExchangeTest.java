package evenrise.solver.engine.move;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.Currents;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import evenrise.solver.sample.Sample;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BalancedExchangeTest {
    private final Plant plant = new Plant(Sample.venue(3, 3));
    private final Situation situation = FirstPlan.build(plant);
    private final Aim aim = new Aim(situation);
    private final SplittableRandom random = new SplittableRandom(1);
    private final BalancedExchange exchange = new BalancedExchange(plant);
    private final Sketch sketch = new Sketch(situation);

    private boolean draw() {
        sketch.clear();
        return exchange.draw(situation, aim, random, sketch);
    }

    private long runningNano(int panel, int phase) {
        return IntStream.range(0, plant.loadCount())
                .filter(load -> situation.placeOf(load) != null)
                .filter(load -> situation.placeOf(load).panel() == panel)
                .filter(load -> (situation.placeOf(load).phaseMask() >> phase & 1) != 0)
                .mapToLong(load -> plant.currents.runningNano[load])
                .sum();
    }

    private long[] runningNano() {
        return IntStream.range(0, plant.panelCount * plant.phaseCount)
                .mapToLong(i -> runningNano(i / plant.phaseCount, i % plant.phaseCount))
                .toArray();
    }

    @Test
    void movesLoadsOfOnePoleBetweenTwoPhasesOfOnePanel() {
        int drawn = 0;
        for (int i = 0; i < 500; i++) {
            if (draw()) {
                drawn++;
                List<Integer> loads = IntStream.range(0, sketch.loadCount())
                        .mapToObj(sketch::load)
                        .toList();
                assertThat(loads).hasSizeBetween(2, 4).allMatch(load -> plant.poles[load] == 1);
                List<Place> before = loads.stream().map(situation::placeOf).toList();
                sketch.apply();
                List<Place> after = loads.stream().map(situation::placeOf).toList();

                assertThat(before.stream().map(Place::panel).distinct()).hasSize(1);
                assertThat(before.stream().map(Place::phaseMask).distinct()).hasSizeLessThanOrEqualTo(2);
                assertThat(after)
                        .doesNotHaveDuplicates()
                        .allMatch(place -> place.panel() == before.get(0).panel());
                assertThat(IntStream.range(0, after.size()))
                        .allMatch(k -> before.get(k).phaseMask() != after.get(k).phaseMask());
                assertThat(situation.unassigned()).isZero();
            }
        }
        assertThat(drawn).isGreaterThan(100);
    }

    /** A single exchange of two loads drawn by chance shifts amperes; the best of many pairs a fraction of one. */
    @Test
    void shiftsLittleRunningCurrentBetweenPhases() {
        long[] shifts = new long[500];
        int drawn = 0;
        while (drawn < shifts.length) {
            long[] before = runningNano();
            if (draw()) {
                sketch.apply();
                long[] after = runningNano();
                shifts[drawn++] = IntStream.range(0, after.length)
                        .mapToLong(i -> Math.abs(after[i] - before[i]))
                        .max()
                        .orElseThrow();
            }
        }
        Arrays.sort(shifts);

        assertThat(shifts[shifts.length / 2] / Currents.NANO).isLessThan(0.5);
    }
}
