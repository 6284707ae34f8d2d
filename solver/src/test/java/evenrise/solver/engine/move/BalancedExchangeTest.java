package evenrise.solver.engine.move;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Currents;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.sample.Sample;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BalancedExchangeTest {
    private final CompiledProject compiled = new CompiledProject(Sample.venue(3, 3));
    private final PlanSums sums = FirstPlan.build(compiled);
    private final Targets targets = new Targets(sums);
    private final SplittableRandom random = new SplittableRandom(1);
    private final BalancedExchange exchange = new BalancedExchange(compiled);
    private final DraftMove draft = new DraftMove(sums);

    private boolean draw() {
        draft.clear();
        return exchange.draw(sums, targets, random, draft);
    }

    private long runningNano(int panel, int phase) {
        return IntStream.range(0, compiled.loadCount())
                .filter(load -> sums.placeOf(load) != null)
                .filter(load -> sums.placeOf(load).panel() == panel)
                .filter(load -> (sums.placeOf(load).phaseMask() >> phase & 1) != 0)
                .mapToLong(load -> compiled.currents.runningNano[load])
                .sum();
    }

    private long[] runningNano() {
        return IntStream.range(0, compiled.panelCount * compiled.phaseCount)
                .mapToLong(i -> runningNano(i / compiled.phaseCount, i % compiled.phaseCount))
                .toArray();
    }

    @Test
    void movesLoadsOfOnePoleBetweenTwoPhasesOfOnePanel() {
        int drawn = 0;
        for (int i = 0; i < 500; i++) {
            if (draw()) {
                drawn++;
                List<Integer> loads = IntStream.range(0, draft.loadCount())
                        .mapToObj(draft::load)
                        .toList();
                assertThat(loads).hasSizeBetween(2, 4).allMatch(load -> compiled.poles[load] == 1);
                List<Place> before = loads.stream().map(sums::placeOf).toList();
                draft.apply();
                List<Place> after = loads.stream().map(sums::placeOf).toList();

                assertThat(before.stream().map(Place::panel).distinct()).hasSize(1);
                assertThat(before.stream().map(Place::phaseMask).distinct()).hasSizeLessThanOrEqualTo(2);
                assertThat(after)
                        .doesNotHaveDuplicates()
                        .allMatch(place -> place.panel() == before.get(0).panel());
                assertThat(IntStream.range(0, after.size()))
                        .allMatch(k -> before.get(k).phaseMask() != after.get(k).phaseMask());
                assertThat(sums.unassigned()).isZero();
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
                draft.apply();
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
