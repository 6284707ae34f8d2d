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

    private static OrderChoice choice(Project project, NightLimits night) {
        return OrderChoice.of(BuiltPlant.of(project, plan(1), Optional.empty()), plan(2), night, 4);
    }

    /** Each takes 200 + 10 min, and a panel's isolation 15 min: two of them fit in a shift, three do not. */
    @Test
    void areInOneGoWhereTheOrderIsInPartsSinceAStageWouldBeLongerThanAShift() {
        OrderChoice choice = choice(project(200), NightLimits.NONE);

        assertThat(choice.order()).satisfies(order -> {
            assertThat(order.longestMinutes()).isLessThanOrEqualTo(OrderChoice.SHIFT_MINUTES);
            assertThat(order.stages()).hasSize(2);
            assertThat(order.cost().isolations()).isEqualTo(2);
            assertThat(order.breaches()).isEmpty();
        });
        assertThat(OtherOrders.of(choice).inOneGo())
                .hasValueSatisfying(whole -> assertThat(whole.stages()).hasSize(1));
        assertThat(OtherOrders.of(choice).leastStages()).isEqualTo(2);
    }

    @Test
    void areNoneWhereNoStageIsLongerOrNightsAreStated() {
        NightLimits days = new NightLimits(NightLimits.NONE.live(), NightLimits.NONE.mostOut(), List.of(2000.0));

        assertThat(choice(project(20), NightLimits.NONE).inOneGo()).isEmpty();
        assertThat(choice(project(200), days).inOneGo()).isEmpty();
        assertThat(choice(project(200), days).order().stages()).hasSize(1);
    }

    /** One breaker alone takes longer than a shift. */
    @Test
    void areNoneWhereNoOrderIsShortEnough() {
        assertThat(choice(project(500), NightLimits.NONE).inOneGo()).isEmpty();
    }

    /** 3 × 210 min in stages of 240 min, of which 15 go to the isolation: 630 / 225 = 2.8. */
    @Test
    void areAsManyAsTheMinutesOfTheChangesAlone() {
        NightLimits nights =
                new NightLimits(NightLimits.NONE.live(), NightLimits.NONE.mostOut(), List.of(240.0, 240.0));

        OrderChoice choice = choice(project(200), nights);

        assertThat(choice.leastStages()).isEqualTo(3);
        assertThat(choice.order().stages()).hasSize(3);
    }
}
