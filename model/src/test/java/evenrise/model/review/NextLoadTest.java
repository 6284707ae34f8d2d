package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NextLoadTest {
    private static Project project(double neutralFactor, double... amps) {
        List<evenrise.model.LoadBuilder> loads = new ArrayList<>();
        for (int i = 0; i < amps.length; i++) {
            loads.add(aLoad("L" + (i + 1)).unswitched().runningAmps(amps[i]));
        }
        return aProject()
                .supply(aSupply().ratedAmps(400))
                .panels(aPanel("P1").slots(6).ratedAmps(100).neutralFactor(neutralFactor))
                .loads(loads)
                .build();
    }

    private static final Plan ONE_EACH = aPlan().assignments(
                    anAssignment("L1").at("P1", 1),
                    anAssignment("L2").at("P1", 3),
                    anAssignment("L3").at("P1", 5))
            .build();

    @Test
    void offersTheFreeSlotWithMostRoomFirst() {
        List<NextLoad.Place> places = NextLoad.places(Layout.of(project(1, 70, 60, 75), ONE_EACH), 1);

        assertThat(places).extracting(NextLoad.Place::slots).containsExactly(List.of(4), List.of(2), List.of(6));
        assertThat(places.get(0).phases()).containsExactly(Phase.B);
        assertThat(places.get(0).amps()).isCloseTo(20, within(1e-9));
    }

    @Test
    void takesAllPhasesOfAMultiPoleBreakerTogether() {
        List<NextLoad.Place> places = NextLoad.places(Layout.of(project(1, 70, 60, 75), ONE_EACH), 3);

        assertThat(places).singleElement().satisfies(place -> {
            assertThat(place.slots()).containsExactly(2, 4, 6);
            assertThat(place.amps()).isCloseTo(5, within(1e-9));
        });
    }

    @Test
    void offersNothingWhereAPhaseIsFull() {
        assertThat(NextLoad.places(Layout.of(project(1, 80, 60, 75), ONE_EACH), 3))
                .isEmpty();
    }

    /** The referee's own neutral, with the load added, is at its limit exactly. */
    @Test
    void stopsWhereTheNeutralIsFull() {
        double most = NextLoad.places(Layout.of(project(0.3, 20, 20, 20), ONE_EACH), 1)
                .get(0)
                .amps();

        Project grown = project(0.3, 20, 20, 20, most);
        List<evenrise.model.plan.Assignment> assignments = new ArrayList<>(ONE_EACH.assignments());
        assignments.add(anAssignment("L4").at("P1", 2).build());
        double neutral = Referee.judge(
                        grown,
                        Plan.builder()
                                .assignments(assignments)
                                .metrics(java.util.Optional.empty())
                                .madeBy(java.util.Optional.empty())
                                .build())
                .nodes()
                .get(1)
                .neutralAmps();
        assertThat(neutral).isCloseTo(30, within(1e-9));
    }
}
