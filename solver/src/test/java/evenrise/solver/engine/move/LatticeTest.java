package evenrise.solver.engine.move;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Project;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSums;
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
    private final CompiledProject compiled = new CompiledProject(project);
    private final PlanSums sums = new PlanSums(compiled);

    /** On board 0, at 2 s and 3 s. */
    private void switchBothOn() {
        sums.set(0, compiled.startDelays[0][2], compiled.steps[0][0]);
        for (int load = 0; load < 2; load++) {
            sums.place(load, compiled.placeAt[0][1 + load][1]);
            sums.wire(load, compiled.output(0, load));
        }
        sums.settle();
    }

    private double onSeconds(int load) {
        return compiled.instants.micros(sums.instantOf(load)) / 1e6;
    }

    private void follow(int board, long seed) {
        DraftMove draft = new DraftMove(sums);
        new Lattice(sums).follow(new int[] {0, 1}, board, new SplittableRandom(seed), draft);
        draft.apply();
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

            assertThat(sums.outputOf(0).board()).isEqualTo(seed % 2);
            assertThat(sums.outputOf(1).board()).isEqualTo(seed % 2);
            assertThat(sums.outputOf(0).ordinal()).isLessThan(sums.outputOf(1).ordinal());
        }
    }
}
