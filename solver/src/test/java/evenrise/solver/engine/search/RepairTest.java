package evenrise.solver.engine.search;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.solver.engine.state.CompiledProject;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Cycles of a project of one load: 1,250 moves and 10 more, then twice as many, and again. */
class RepairTest {
    private static final int FIRST_CYCLE = 1_260;

    private final Repair repair = new Repair(new CompiledProject(aProject()
            .panels(aPanel("P1"))
            .boards(aBoard("B1"))
            .loads(aLoad("one"))
            .build()));

    @Test
    void beginsMildAndCools() {
        List<Double> cycle = temperatures(FIRST_CYCLE);

        assertThat(cycle.get(0)).isCloseTo(250, within(1.0));
        assertThat(cycle.get(FIRST_CYCLE - 1)).isCloseTo(50, within(1.0));
        assertThat(cycle).isSortedAccordingTo((one, other) -> Double.compare(other, one));
    }

    @Test
    void growsLongerAndHotterUpToHalfAPlace() {
        temperatures(FIRST_CYCLE);

        assertThat(temperatures(2 * FIRST_CYCLE + 1).get(0)).isCloseTo(1_250, within(2.0));
        assertThat(temperatures(4 * FIRST_CYCLE + 1).get(0)).isCloseTo(5_000, within(5.0));
        assertThat(temperatures(8 * FIRST_CYCLE + 1).get(0)).isCloseTo(5_000, within(5.0));
    }

    @Test
    void countsTheObjectiveInFullOnlyWhenCold() {
        temperatures(1);
        double hot = repair.leniency();
        temperatures(FIRST_CYCLE - 1);

        assertThat(hot).isCloseTo(5, within(0.02));
        assertThat(repair.leniency()).isCloseTo(1, within(0.02));
    }

    private List<Double> temperatures(int moves) {
        List<Double> temperatures = new ArrayList<>();
        for (int i = 0; i < moves; i++) {
            repair.nextMove();
            temperatures.add(repair.temperature());
        }
        return temperatures;
    }
}
