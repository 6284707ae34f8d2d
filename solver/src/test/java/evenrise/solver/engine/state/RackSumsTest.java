package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Two racks in panels of 12 slots: P1 with odd slots left and even ones right, P2 with a row for each slot. */
class RackSumsTest {
    private static final int R1 = 0;
    private static final int R2 = 1;
    private final CompiledProject compiled = new CompiledProject(aProject()
            .panels(aPanel("P1").slots(12), aPanel("P2").slots(12).sequential())
            .loads(
                    aLoad("L1").with(it -> it.rack(Optional.of("R1"))),
                    aLoad("L2").with(it -> it.rack(Optional.of("R2"))))
            .build());
    private final RackSums sums = new RackSums(compiled);

    private void add(int rack, int panel, int slot, int poles) {
        sums.addPlace(rack, compiled.placeAt[panel][slot][poles], 1);
    }

    private void remove(int rack, int panel, int slot, int poles) {
        sums.addPlace(rack, compiled.placeAt[panel][slot][poles], -1);
    }

    @Test
    void countPanelsBeyondTheFirstOfEachRack() {
        add(R1, 0, 1, 1);
        assertThat(sums.panels()).isZero();
        add(R1, 1, 1, 1);
        add(R1, 1, 2, 1);
        add(R2, 1, 3, 1);

        assertThat(sums.panels()).isEqualTo(1);
        remove(R1, 1, 1, 1);
        assertThat(sums.panels()).isEqualTo(1);
        remove(R1, 1, 2, 1);
        assertThat(sums.panels()).isZero();
    }

    @Test
    void countBoardsBeyondTheFirstOfEachRack() {
        sums.addBoard(R1, 4, 1);
        sums.addBoard(R1, 5, 1);
        sums.addBoard(R1, 6, 1);
        sums.addBoard(R2, 4, 1);
        assertThat(sums.boards()).isEqualTo(2);

        sums.addBoard(R1, 5, -1);
        assertThat(sums.boards()).isEqualTo(1);
    }

    /** Slots 3 and 4 are both row 2; a breaker of three poles in 7 takes rows 4, 5 and 6: row 3 is between. */
    @Test
    void countRowsBetweenThatTheRackDoesNotTake() {
        add(R1, 0, 3, 1);
        add(R1, 0, 4, 1);
        assertThat(sums.rows()).isZero();
        add(R1, 0, 7, 3);
        assertThat(sums.rows()).isEqualTo(1);

        remove(R1, 0, 3, 1);
        assertThat(sums.rows()).as("slot 4 is in the same row").isEqualTo(1);
        remove(R1, 0, 4, 1);
        assertThat(sums.rows()).isZero();
    }

    /** In P2 slots 2 and 9 are rows 2 and 9: six between; another rack's breakers in between change nothing. */
    @Test
    void countsEachPanelAndEachRackByItself() {
        add(R1, 1, 2, 1);
        add(R1, 1, 9, 1);
        add(R1, 0, 11, 1);
        add(R2, 1, 4, 1);
        add(R2, 1, 6, 1);

        assertThat(sums.rows()).isEqualTo(6 + 1);
    }
}
