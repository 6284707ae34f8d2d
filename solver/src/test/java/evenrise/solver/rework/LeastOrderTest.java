package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.BoardBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LeastOrderTest {
    /** A panel whose breakers may be moved while it is live, by its maker. */
    private static PanelBuilder withdrawable(String id) {
        return aPanel(id).with(panel -> panel.withdrawableUnderLoad("maker's manual, invented"));
    }

    private static OrderCost least(Project project, Plan built, Plan target, OrderCost beside) {
        return new LeastOrder(new Passage(project, built, target)).beside(beside);
    }

    private static OrderCost least(Project project, Plan built, Plan target) {
        return least(
                project,
                built,
                target,
                OrderOfWork.between(project, built, target, 1).cost());
    }

    @Nested
    class LoadsThatGoWhereOthersAre {
        private final Project project = aProject()
                .panels(withdrawable("P"))
                .loads(
                        aLoad("one").unswitched(),
                        aLoad("two").unswitched(),
                        aLoad("three").unswitched())
                .build();

        private Plan plan(int one, int two, int three) {
            return aPlan().assignments(
                            anAssignment("one").at("P", one),
                            anAssignment("two").at("P", two),
                            anAssignment("three").at("P", three))
                    .build();
        }

        @Test
        void areLockedOutTogetherInARing() {
            OrderCost least = least(project, plan(1, 2, 3), plan(2, 3, 1));

            assertThat(least).isEqualTo(new OrderCost(0, 0, 3, 1, 1));
        }

        /** Three goes to the free slot, then two to where it was, then one. */
        @Test
        void goOneAfterTheOtherInARow() {
            OrderCost least = least(project, plan(1, 2, 3), plan(2, 3, 4));

            assertThat(least.mostLockedOut()).isEqualTo(1);
        }
    }

    @Nested
    class PanelsAndBoards {
        private Project project(BoardBuilder board, PanelBuilder... panels) {
            return aProject()
                    .panels(panels)
                    .boards(board)
                    .groups(aGroup("pit"), aGroup("far"))
                    .loads(
                            aLoad("one").group("pit"),
                            aLoad("two").group("pit"),
                            aLoad("three").group("far"))
                    .build();
        }

        private Plan plan(int slot, int output) {
            return aPlan().board("B", 0, 0.25)
                    .assignments(
                            anAssignment("one").at("P", slot).on("B", 1),
                            anAssignment("two").at("P", 2).on("B", output),
                            anAssignment("three").at("Q", 1).on("B", 2))
                    .build();
        }

        @Test
        void countOnceEachWhereTheyAreWorkedOn() {
            OrderCost least = least(
                    project(aBoard("B").in("Q").reaches("P", "Q"), aPanel("P"), aPanel("Q")), plan(1, 3), plan(3, 4));

            assertThat(least.isolations()).isEqualTo(2);
        }

        @Test
        void countNotWhereTheBoardIsDeadWithItsPanelAnyway() {
            OrderCost least = least(
                    project(aBoard("B").in("P").reaches("P", "Q"), aPanel("P"), aPanel("Q")), plan(1, 3), plan(3, 4));

            assertThat(least.isolations()).isEqualTo(1);
        }

        /** The board that is dead with its panel switches the load in the other one. */
        @Test
        void takeOutTheGroupsThatTheySurelyFeed() {
            OrderCost least = least(
                    project(aBoard("B").in("P").reaches("P", "Q"), aPanel("P"), aPanel("Q")), plan(1, 3), plan(3, 3));

            assertThat(least.outages()).isEqualTo(2);
        }
    }

    @Nested
    class StagesThatHaveAnEnd {
        private final Project project = aProject()
                .panels(aPanel("P"))
                .loads(
                        aLoad("one").unswitched(),
                        aLoad("two").unswitched(),
                        aLoad("three").unswitched())
                .build();

        private static Plan plan(int first) {
            return aPlan().assignments(
                            anAssignment("one").at("P", first),
                            anAssignment("two").at("P", first + 1),
                            anAssignment("three").at("P", first + 2))
                    .build();
        }

        private OrderCost least(double windowMinutes) {
            NightLimits night = new NightLimits(Set.of(), OptionalInt.empty(), List.of(windowMinutes));
            BuiltPlant plant = BuiltPlant.of(project, plan(1), Optional.empty());
            return new LeastOrder(new Passage(plant, plan(4), night)).beside(new OrderCost(0, 1, 3, 1, 1));
        }

        /** Three times 20 min for a breaker and 10 for its test, and 15 for the panel: 105 min. */
        @Test
        void areOneWhereAllFits() {
            assertThat(least(105)).isEqualTo(new OrderCost(0, 1, 3, 1, 1));
        }

        /** 90 min of work into 89 min beside the isolation are two stages, so two isolations and two outages. */
        @Test
        void areAsManyAsTheirMinutesAskFor() {
            assertThat(least(104)).satisfies(least -> {
                assertThat(least.stages()).isEqualTo(2);
                assertThat(least.isolations()).isEqualTo(2);
                assertThat(least.outages()).isEqualTo(2);
            });
        }
    }

    @Nested
    class LoadsThatNeedTheSystemOff {
        private final Project project = aProject()
                .panels(withdrawable("P"))
                .boards(aBoard("B").in("P").reaches("P"))
                .loads(processing("one"), processing("two"), aLoad("amp").amplifier())
                .build();

        private static LoadBuilder processing(String id) {
            return aLoad(id).processing();
        }

        private Plan plan(int one, int two) {
            return aPlan().board("B", 0, 0.25)
                    .assignments(
                            anAssignment("one").at("P", one).on("B", 1),
                            anAssignment("two").at("P", two).on("B", 2),
                            anAssignment("amp").at("P", 9).on("B", 3))
                    .build();
        }

        @Test
        void areDoneTogetherWhereTheSystemGoesOffOnce() {
            OrderCost least = least(project, plan(1, 2), plan(4, 5), new OrderCost(1, 0, 2, 1, 1));

            assertThat(least.systemOffs()).isEqualTo(1);
            assertThat(least.mostLockedOut()).isEqualTo(2);
        }

        @Test
        void maybeOneByOneWhereItGoesOffTwice() {
            OrderCost least = least(project, plan(1, 2), plan(4, 5), new OrderCost(2, 0, 1, 2, 2));

            assertThat(least.mostLockedOut()).isEqualTo(1);
        }
    }

    @Test
    void nothingIsLeastWhereNothingIsToBeDone() {
        Project project =
                aProject().panels(aPanel("P")).loads(aLoad("one").unswitched()).build();
        Plan plan = aPlan().assignments(anAssignment("one").at("P", 1)).build();

        assertThat(least(project, plan, plan)).isEqualTo(OrderCost.NOTHING);
    }
}
