package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class NightLimitsTest {
    private final Project project = aProject()
            .panels(aPanel("P1").slots(12).ratedAmps(60), aPanel("P2").slots(12).ratedAmps(60))
            .boards(aBoard("B1").in("P1"), aBoard("B2").in("P2"))
            .groups(aGroup("left"), aGroup("right"))
            .loads(
                    aLoad("amp").amplifier().runningAmps(3).group("left"),
                    aLoad("horn").amplifier().runningAmps(3).group("right"),
                    aLoad("light").unswitched().runningAmps(2),
                    aLoad("fan").unswitched().runningAmps(2))
            .build();
    private final Plan built = plan(1, 1);

    private static Plan plan(int slotOfAmp, int slotOfHorn) {
        return aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .assignments(
                        anAssignment("amp").at("P1", slotOfAmp).on("B1", 1),
                        anAssignment("light").at("P1", 2),
                        anAssignment("horn").at("P2", slotOfHorn).on("B2", 1),
                        anAssignment("fan").at("P2", 2))
                .build();
    }

    private WorkOrder order(Plan target, NightLimits night) {
        return new OrderOfWork(project, built, target, night).withAtLeast(4);
    }

    private static NightLimits live(String... loads) {
        return new NightLimits(Set.of(loads), OptionalInt.empty(), List.of());
    }

    private static List<String> messages(WorkOrder order) {
        return order.breaches().stream().map(Breach::message).toList();
    }

    @Nested
    class WhatStaysLive {
        @Test
        void isMeantByLoadGroupOrPanel() {
            ProjectIndex index = new ProjectIndex(project);

            assertThat(NightLimits.loads(index, built, List.of("fan"))).containsExactly("fan");
            assertThat(NightLimits.loads(index, built, List.of("left"))).containsExactly("amp");
            assertThat(NightLimits.loads(index, built, List.of("P1"))).containsExactly("amp", "light");
        }

        @Test
        void isKeptWhereOtherPanelsAreWorkedOn() {
            assertThat(order(plan(3, 1), live("fan", "horn")).breaches()).isEmpty();
        }

        /** Its panel is dead while another breaker in it is moved. */
        @Test
        void isNamedWhereTheWorkTakesItOff() {
            assertThat(messages(order(plan(3, 1), live("light"))))
                    .anyMatch(message -> message.contains("load 'light' is off, though it is to stay live"));
        }

        @Test
        void holdsWhatWouldTakeItOffInPlace() {
            Project held = Kept.inPlace(project, built, false, live("light"));

            Map<String, Boolean> isFixed = new HashMap<>();
            held.loads()
                    .forEach(load -> isFixed.put(load.id(), load.fixed().slot().isPresent()));
            assertThat(isFixed).containsEntry("amp", true).containsEntry("light", true);
            assertThat(isFixed).containsEntry("horn", false).containsEntry("fan", false);
        }

        @Test
        void leavesOutPlansThatAreReachedByTakingItOff() {
            assertThat(Kept.isReached(project, built, plan(3, 1), false, live("light")))
                    .isFalse();
            assertThat(Kept.isReached(project, built, plan(1, 3), false, live("light")))
                    .isTrue();
        }
    }

    @Nested
    class GroupsOutAtOnce {
        @Test
        void areNoMoreThanAllowedThoughMoreStagesAreNeeded() {
            NightLimits one = new NightLimits(Set.of(), OptionalInt.of(1), List.of());

            WorkOrder order = order(plan(3, 3), one);

            assertThat(order.breaches()).isEmpty();
            assertThat(order.stages()).hasSize(2);
        }

        @Test
        void areNamedWhereNoOrderKeepsToIt() {
            NightLimits none = new NightLimits(Set.of(), OptionalInt.of(0), List.of());

            assertThat(messages(order(plan(3, 1), none)))
                    .containsExactly("1 shutdown groups are out at once, allowed are 0.");
        }
    }

    @Nested
    class ANight {
        /** Each stage: 15 min for the panel, 20 for the breaker, 10 for tests, 2 for what is switched by hand. */
        private static final double STAGE_MINUTES = 47;

        private WorkOrder within(double... windows) {
            return order(
                    plan(3, 3),
                    new NightLimits(
                            Set.of(),
                            OptionalInt.empty(),
                            Arrays.stream(windows).boxed().toList()));
        }

        @Test
        void isAsLongAsItsSteps() {
            assertThat(within(STAGE_MINUTES).stages())
                    .allSatisfy(stage -> assertThat(stage.minutes()).isEqualTo(STAGE_MINUTES));
        }

        @Test
        void takesNoStageThatIsLonger() {
            assertThat(within(STAGE_MINUTES).breaches()).isEmpty();
            assertThat(within(STAGE_MINUTES).stages()).hasSize(2);
            assertThat(messages(within(STAGE_MINUTES - 1)))
                    .isNotEmpty()
                    .allMatch(message -> message.endsWith("min, the longest night has 46 min."));
        }

        @Test
        void isFilledInTheOrderOfStages() {
            WorkOrder order = within(STAGE_MINUTES, STAGE_MINUTES);

            Nights.Layout nights = Nights.of(order, List.of(STAGE_MINUTES, STAGE_MINUTES));

            assertThat(nights.nights()).extracting(Nights.Night::stages).containsExactly(List.of(1), List.of(2));
            assertThat(nights.left()).isEmpty();
        }

        @Test
        void leavesWhatHasNoRoomAndSaysSo() {
            Nights.Layout nights = Nights.of(within(STAGE_MINUTES), List.of(STAGE_MINUTES));

            assertThat(nights.left()).containsExactly(2);
        }
    }
}
