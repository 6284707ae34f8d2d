package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.project.SwitchedSystem;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Boards B1, B2 after B1, B3 after B2, and HALL, which states its system; loads 0 and 1 of the core, 2 and 3 of the hall. */
class SystemSpreadTest {
    private static final int B1 = 0;
    private static final int B2 = 1;
    private static final int B3 = 2;
    private static final int HALL = 3;
    private static final int CORE_LOAD = 0;
    private static final int HALL_LOAD = 2;

    private final SystemSpread spread = new SystemSpread(new CompiledProject(aProject()
            .panels(aPanel("P1"))
            .boards(
                    aBoard("B1"),
                    aBoard("B2").after("B1"),
                    aBoard("B3").after("B2"),
                    aBoard("HALL").with(it -> it.system(Optional.of("hall"))))
            .loads(of("core", "C1"), of("core", "C2"), of("hall", "H1"), of("hall", "H2"))
            .build()
            .withSystems(List.of(
                    SwitchedSystem.builder().id("core").build(),
                    SwitchedSystem.builder().id("hall").build()))));

    private static LoadBuilder of(String system, String id) {
        return aLoad(id).with(it -> it.system(Optional.of(system)));
    }

    private void add(int load, int board) {
        spread.add(load, board, 1);
        spread.refresh(board);
    }

    private void remove(int load, int board) {
        spread.add(load, board, -1);
        spread.refresh(board);
    }

    private long places() {
        return spread.charge() / Charges.PLACE;
    }

    @Test
    void chargesLoadsOfAnotherSystemThanMostOfABoard() {
        add(CORE_LOAD, B1);
        add(CORE_LOAD + 1, B1);
        assertThat(places()).isZero();
        assertThat(spread.systemOn(B1)).isZero();

        add(HALL_LOAD, B1);

        assertThat(places()).isEqualTo(1);
        assertThat(spread.systemOn(B1)).isEqualTo(CompiledProject.NONE);
        assertThat(spread.muddled().size()).isEqualTo(1);
        remove(HALL_LOAD, B1);
        assertThat(places()).isZero();
    }

    @Test
    void chargesEveryLoadOfAnotherSystemThanTheBoardStates() {
        add(CORE_LOAD, HALL);
        add(CORE_LOAD + 1, HALL);
        assertThat(places()).isEqualTo(2);

        add(HALL_LOAD, HALL);
        assertThat(places()).isEqualTo(2);
    }

    @Test
    void chargesABoardThatFollowsAUsedOneOfAnotherSystem() {
        add(CORE_LOAD, B1);
        add(HALL_LOAD, B2);

        assertThat(places()).isEqualTo(1);
    }

    /** B2 without loads hands on: B3 follows B1 then, and B2 again once it is used. */
    @Test
    void looksPastBoardsWithoutLoads() {
        add(CORE_LOAD, B1);
        add(HALL_LOAD, B3);
        assertThat(places()).as("B3 behind B1").isEqualTo(1);
        remove(CORE_LOAD, B1);
        assertThat(places()).as("B3 behind none").isZero();
        add(CORE_LOAD, B1);
        assertThat(places()).as("B3 behind B1 again").isEqualTo(1);

        add(HALL_LOAD + 1, B2);
        assertThat(places()).as("B2 behind B1, B3 behind B2").isEqualTo(1);

        remove(CORE_LOAD, B1);
        assertThat(places()).isZero();
        add(CORE_LOAD, B1);
        remove(HALL_LOAD + 1, B2);
        remove(HALL_LOAD, B3);
        assertThat(places()).isZero();
    }
}
