package evenrise.solver.engine.move;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Project;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Loads that a board takes over, or keeps with another setting. */
class LatticeTest {
    private final Project project = aProject()
            .panels(aPanel("P1"))
            .boardTypes(aBoardType("four")
                    .outputs(4)
                    .startDelaySeconds(0, 1, 2, 3, 4, 5)
                    .stepSeconds(1, 2))
            .boards(aBoard("from").type("four"), aBoard("to").type("four"))
            .loads(aLoad("one"), aLoad("two"))
            .build();
    private final Plant plant = new Plant(project);
    private final Situation situation = new Situation(plant);

    /** On board 0, at 2 s and 3 s. */
    private void switchBothOn() {
        situation.set(0, plant.startDelays[0][2], plant.steps[0][0]);
        for (int load = 0; load < 2; load++) {
            situation.place(load, plant.placeAt[0][1 + load][1]);
            situation.wire(load, plant.output(0, load));
        }
        situation.settle();
    }

    private double onSeconds(int load) {
        return plant.instants.micros(situation.instantOf(load)) / 1e6;
    }

    private void follow(int board, long seed) {
        Sketch sketch = new Sketch(situation);
        new Lattice(situation).follow(new int[] {0, 1}, board, new SplittableRandom(seed), sketch);
        sketch.apply();
    }

    @Test
    void mostlyKeepTheTimeOfTheFirst() {
        long kept = IntStream.range(0, 400)
                .filter(seed -> {
                    switchBothOn();
                    follow(1, seed);
                    return onSeconds(0) == 2;
                })
                .count();

        assertThat(kept).isGreaterThan(200);
    }

    @Test
    void keepTheirOrderAndAnOutputEach() {
        for (int seed = 0; seed < 400; seed++) {
            switchBothOn();

            follow(seed % 2, seed);

            assertThat(situation.outputOf(0).board()).isEqualTo(seed % 2);
            assertThat(situation.outputOf(1).board()).isEqualTo(seed % 2);
            assertThat(situation.outputOf(0).ordinal())
                    .isLessThan(situation.outputOf(1).ordinal());
        }
    }
}
