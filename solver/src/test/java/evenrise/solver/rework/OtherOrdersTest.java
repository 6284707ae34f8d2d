package evenrise.solver.rework;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.WorkTimes;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Three breakers move inside one panel, which is isolated once for all of them: that makes one long stage. */
class OtherOrdersTest {
    private static Project project(double minutesOfOne) {
        return aProject()
                .panels(aPanel("P1").slots(12))
                .loads(
                        aLoad("one").unswitched(),
                        aLoad("two").unswitched(),
                        aLoad("three").unswitched())
                .build()
                .withWork(Optional.of(WorkTimes.builder()
                        .samePanelMinutes(OptionalDouble.of(minutesOfOne))
                        .build()));
    }

    private static Plan plan(int first) {
        return aPlan().assignments(
                        anAssignment("one").at("P1", first),
                        anAssignment("two").at("P1", first + 2),
                        anAssignment("three").at("P1", first + 4))
                .build();
    }

    private static OtherOrders others(Project project, NightLimits night) {
        BuiltPlant plant = BuiltPlant.of(project, plan(1), Optional.empty());
        OrderOfWork work = new OrderOfWork(plant, plan(2), night);
        return OtherOrders.of(work, work.withAtLeast(4), plant, plan(2), night, 4);
    }

    @Test
    void hasOneInShiftsWhereAStageIsLonger() {
        assertThat(others(project(200), NightLimits.NONE).inShifts()).hasValueSatisfying(order -> {
            assertThat(order.longestMinutes()).isLessThanOrEqualTo(OtherOrders.SHIFT_MINUTES);
            assertThat(order.stages()).hasSize(2);
            assertThat(order.cost().isolations()).isEqualTo(2);
            assertThat(order.breaches()).isEmpty();
        });
    }

    @Test
    void hasNoneWhereNoStageIsLongerOrNightsAreStated() {
        assertThat(others(project(20), NightLimits.NONE).inShifts()).isEmpty();
        assertThat(others(
                                project(200),
                                new NightLimits(NightLimits.NONE.live(), NightLimits.NONE.mostOut(), List.of(2000.0)))
                        .inShifts())
                .isEmpty();
    }

    /** One breaker alone takes longer than a shift. */
    @Test
    void hasNoneWhereNoOrderIsShortEnough() {
        assertThat(others(project(500), NightLimits.NONE).inShifts()).isEmpty();
    }
}
