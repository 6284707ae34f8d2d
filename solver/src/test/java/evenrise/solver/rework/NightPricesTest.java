package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.AssignmentBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.WorkTimes;
import evenrise.model.rules.ProjectIndex;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class NightPricesTest {
    private final Project project = aProject()
            .panels(aPanel("P1").slots(12).ratedAmps(60), aPanel("P2").slots(12).ratedAmps(60))
            .boards(aBoard("B1").in("P1").reaches("P1", "P2"), aBoard("B2").in("P2"))
            .loads(
                    aLoad("amp").amplifier().runningAmps(3),
                    aLoad("horn").amplifier().runningAmps(3),
                    aLoad("light").unswitched().runningAmps(2))
            .build();
    private final Plan built = plan(anAssignment("amp").at("P1", 1).on("B1", 1));

    private Plan plan(AssignmentBuilder amp) {
        return aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .assignments(
                        amp,
                        anAssignment("horn").at("P2", 1).on("B2", 1),
                        anAssignment("light").at("P2", 2))
                .build();
    }

    private NightCost cost(Project priced, Plan target) {
        return NightPrices.of(priced, built).cost(Changes.between(new ProjectIndex(priced), built, target));
    }

    private Project with(WorkTimes times) {
        return project.with().work(Optional.of(times)).build();
    }

    @Nested
    class ABreaker {
        /** 20 min for it, 15 for its panel, 10 for its tests. */
        @Test
        void inItsPanelCostsItselfItsPanelAndItsTests() {
            NightCost cost = cost(project, plan(anAssignment("amp").at("P1", 3).on("B1", 1)));

            assertThat(cost.count(MoveKind.SAME_PANEL)).isEqualTo(1);
            assertThat(cost.count(MoveKind.ISOLATION)).isEqualTo(1);
            assertThat(cost.minutes()).isEqualTo(20 + 15 + 10);
        }

        /** The lead of amp ran to P1; it is drawn to P2, and both panels are dead, with the board in one of them. */
        @Test
        void inAnotherPanelHasItsLeadDrawnToo() {
            NightCost cost = cost(project, plan(anAssignment("amp").at("P2", 3).on("B1", 1)));

            assertThat(cost.count(MoveKind.OTHER_PANEL)).isEqualTo(1);
            assertThat(cost.count(MoveKind.DRAWN_LEAD)).isEqualTo(1);
            assertThat(cost.count(MoveKind.ISOLATION)).isEqualTo(2);
            assertThat(cost.minutes()).isEqualTo(120 + 60 + 2 * 15 + 10);
        }
    }

    @Nested
    class ALead {
        @Test
        void onAnotherOutputOfItsBoardIsNotDrawn() {
            NightCost cost = cost(project, plan(anAssignment("amp").at("P1", 1).on("B1", 2)));

            assertThat(cost.count(MoveKind.LEAD)).isEqualTo(1);
            assertThat(cost.count(MoveKind.DRAWN_LEAD)).isZero();
        }

        @Test
        void onABoardInAnotherPanelIsDrawn() {
            NightCost cost = cost(project, plan(anAssignment("amp").at("P1", 1).on("B2", 2)));

            assertThat(cost.count(MoveKind.DRAWN_LEAD)).isEqualTo(1);
            assertThat(cost.count(MoveKind.SAME_PANEL) + cost.count(MoveKind.OTHER_PANEL))
                    .isZero();
        }
    }

    @Nested
    class WhatTheProjectStates {
        @Test
        void countsInsteadOfWhatIsUsual() {
            Project stated = with(WorkTimes.builder()
                    .samePanelMinutes(OptionalDouble.of(7))
                    .isolationMinutes(OptionalDouble.of(100))
                    .build());

            assertThat(cost(stated, plan(anAssignment("amp").at("P1", 3).on("B1", 1)))
                            .minutes())
                    .isEqualTo(7 + 100 + 10);
        }

        @Test
        void isToldFromWhatIsUsual() {
            WorkMinutes minutes = WorkMinutes.of(with(
                    WorkTimes.builder().samePanelMinutes(OptionalDouble.of(7)).build()));

            assertThat(minutes.isStated(MoveKind.SAME_PANEL)).isTrue();
            assertThat(minutes.isStated(MoveKind.LEAD)).isFalse();
        }
    }

    @Nested
    class ASystem {
        /** Nobody may bring the brain back while the amplifiers that wait for it are on. */
        @Test
        void isOffWithAPanelThatHousesWhatItWaitsFor() {
            Project early = project.with()
                    .loads(project.loads().stream()
                            .map(load -> load.id().equals("horn") ? load.withRole(Role.PROCESSING) : load)
                            .toList())
                    .build();
            Plan target = plan(anAssignment("amp").at("P1", 3).on("B1", 1));
            Plan inTheirs = built.with()
                    .assignments(built.assignments().stream()
                            .map(seat -> seat.load().equals("light") ? seat.withSlot(5) : seat)
                            .toList())
                    .build();

            assertThat(cost(early, target).count(MoveKind.SHUTDOWN)).isZero();
            assertThat(cost(early, inTheirs).count(MoveKind.SHUTDOWN)).isEqualTo(1);
        }
    }
}
