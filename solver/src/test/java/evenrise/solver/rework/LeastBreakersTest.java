package evenrise.solver.rework;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.rules.Layout;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LeastBreakersTest {
    /** Slots 1, 2 and 7, 8 are on phase A, as breakers of one pole are numbered. */
    private static Project plant(double first, double second, double third) {
        return aProject()
                .supply(aSupply().ratedAmps(400))
                .panels(
                        aPanel("P1").slots(12).ratedAmps(25),
                        aPanel("P2").slots(12).ratedAmps(25))
                .loads(
                        aLoad("a").unswitched().runningAmps(first),
                        aLoad("b").unswitched().runningAmps(second),
                        aLoad("c").unswitched().runningAmps(third),
                        aLoad("d").unswitched().runningAmps(first))
                .build();
    }

    private static Plan plan() {
        return aPlan().assignments(
                        anAssignment("a").at("P1", 1),
                        anAssignment("b").at("P1", 2),
                        anAssignment("c").at("P1", 7),
                        anAssignment("d").at("P2", 1))
                .build();
    }

    private static int least(Project project) {
        return LeastBreakers.of(Layout.of(project, plan()));
    }

    /** 0.8 × 25 A = 20 A may be carried; 9 + 8 + 7 = 24 A are, and any one of the three takes away 4 A. */
    @Test
    void oneLeavesWhereOneTakesTheExcessAway() {
        assertThat(least(plant(9, 8, 7))).isEqualTo(1);
    }

    /** 17 + 16 + 3 = 36 A: 16 A must go, 17 A would do. 18 + 18 + 6 = 42 A: 22 A must, 18 A do not. */
    @Test
    void asManyLeaveAsTheGreatestOfThemNeed() {
        assertThat(least(plant(17, 16, 3))).isEqualTo(1);
        assertThat(least(plant(18, 18, 6))).isEqualTo(2);
    }

    /** Phase A of P1 is over by 16 A, P2 by 2 A: the loads of the one are not those of the other. */
    @Test
    void panelsAddUp() {
        assertThat(least(plant(22, 8, 6))).isEqualTo(2);
    }

    @Test
    void nothingIsSaidWhereNothingIsOver() {
        assertThat(least(plant(6, 6, 6))).isZero();
    }

    @Test
    void nothingIsSaidOfScenes() {
        Project scenes = plant(18, 18, 6)
                .with()
                .scenes(List.of(Scene.builder().id("concert").build()))
                .build();

        assertThat(least(scenes)).isZero();
    }

    /** Whatever was found to keep every rule moves as many breakers, or more. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noCureThatIsFoundMovesFewer(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Project project = Reworked.raised(planted.project(), seed, 6, 0.6);

        Front front = Reworked.front(project, planted.plan(), 2_000);

        assertThat(front.points())
                .filteredOn(point -> point.violations() == 0)
                .allSatisfy(
                        point -> assertThat(point.changes().breakers()).isGreaterThanOrEqualTo(front.leastBreakers()));
    }
}
