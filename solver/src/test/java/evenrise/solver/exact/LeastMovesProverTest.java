package evenrise.solver.exact;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A panel may carry 0.8 × 25 A = 20 A a line. Slots 1, 2 and 7, 8 are on phase A, 3, 4 on B, 5, 6 on C. */
class LeastMovesProverTest {
    private static int least(Project project, Plan built) {
        PlanningRequest request = new PlanningRequest(project, Optional.of(built), new Budget.Moves(200_000), 1, 1);
        return new ExactBounds().leastMoves(request, built);
    }

    private static Project plant(List<PanelBuilder> panels, LoadBuilder... loads) {
        return aProject()
                .supply(aSupply().ratedAmps(400))
                .panels(panels.toArray(PanelBuilder[]::new))
                .boardTypes(aBoardType("four").outputs(4))
                .boards(aBoard("B1").type("four").in("P1"))
                .loads(loads)
                .build();
    }

    private static PanelBuilder panel(String id, int slots) {
        return aPanel(id).slots(slots).ratedAmps(25);
    }

    private static LoadBuilder steady(String id, double amps) {
        return aLoad(id).unswitched().runningAmps(amps);
    }

    private static LoadBuilder switchedLoad(String id, double amps) {
        return aLoad(id).runningAmps(amps);
    }

    @Test
    void oneMovesWhereAnotherLineHasRoomAndASlot() {
        Project project = plant(List.of(panel("P1", 12)), steady("a", 12), steady("b", 12));
        Plan built = aPlan().assignments(
                        anAssignment("a").at("P1", 1), anAssignment("b").at("P1", 2))
                .build();

        assertThat(least(project, built)).isEqualTo(1);
    }

    /** All six slots are taken: whoever leaves A changes places with somebody. */
    @Test
    void twoMoveWhereEverySlotIsTaken() {
        Project project = plant(
                List.of(panel("P1", 6)),
                steady("a", 12),
                steady("b", 12),
                steady("c", 1),
                steady("d", 1),
                steady("e", 1),
                steady("f", 1));
        Plan built = aPlan().assignments(
                        anAssignment("a").at("P1", 1),
                        anAssignment("b").at("P1", 2),
                        anAssignment("c").at("P1", 3),
                        anAssignment("d").at("P1", 4),
                        anAssignment("e").at("P1", 5),
                        anAssignment("f").at("P1", 6))
                .build();

        assertThat(least(project, built)).isEqualTo(2);
    }

    /** 18 A on each line of P1, and 12 A more on A: it has to go to P2, and leaves its lead, which is a move, too. */
    @Test
    void aBreakerThatHasToGoToAnotherPanelTakesItsLeadAlong() {
        Project project = plant(
                        List.of(panel("P1", 12), panel("P2", 12)),
                        switchedLoad("a", 18),
                        switchedLoad("b", 18),
                        switchedLoad("c", 18),
                        switchedLoad("d", 12))
                .withBoards(List.of(
                        aBoard("B1").type("four").in("P1").reaches("P1", "P2").build()));
        Plan built = aPlan().assignments(
                        anAssignment("a").at("P1", 1).on("B1", 1),
                        anAssignment("b").at("P1", 3).on("B1", 2),
                        anAssignment("c").at("P1", 5).on("B1", 3),
                        anAssignment("d").at("P1", 2).on("B1", 4))
                .build();

        assertThat(least(project, built)).isEqualTo(2);
    }

    /** Breaker and lead of a load that is not there yet. */
    @Test
    void whatIsNewIsABreakerAndALead() {
        Project project = plant(List.of(panel("P1", 12)), switchedLoad("a", 1), switchedLoad("b", 1));
        Plan built =
                aPlan().assignments(anAssignment("a").at("P1", 1).on("B1", 1)).build();

        assertThat(least(project, built)).isEqualTo(2);
    }

    @Test
    void ofTwoLeadsOnOneOutputOneMoves() {
        Project project = plant(List.of(panel("P1", 12)), switchedLoad("a", 1), switchedLoad("b", 1));
        Plan built = aPlan().assignments(
                        anAssignment("a").at("P1", 1).on("B1", 1),
                        anAssignment("b").at("P1", 3).on("B1", 1))
                .build();

        assertThat(least(project, built)).isEqualTo(1);
    }

    @Test
    void nothingMovesWhereNothingIsBroken() {
        Project project = plant(List.of(panel("P1", 12)), steady("a", 12), steady("b", 12));
        Plan built = aPlan().assignments(
                        anAssignment("a").at("P1", 1), anAssignment("b").at("P1", 3))
                .build();

        assertThat(least(project, built)).isZero();
    }

    @Test
    void nothingIsSaidOfScenes() {
        Project project = plant(List.of(panel("P1", 12)), steady("a", 12), steady("b", 12))
                .withScenes(List.of(Scene.builder().id("concert").build()));
        Plan built = aPlan().assignments(
                        anAssignment("a").at("P1", 1), anAssignment("b").at("P1", 2))
                .build();

        assertThat(least(project, built)).isZero();
    }

    /** A plan that keeps every rule is no move away from itself, and nothing else may be claimed. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void claimsNoMoveOfAPlanThatKeepsEveryRule(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);

        assertThat(least(planted.project(), planted.plan())).isZero();
    }
}
