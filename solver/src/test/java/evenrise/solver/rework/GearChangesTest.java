package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.AssignmentBuilder;
import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Gear that has gone, has come or has another breaker since the plan was built; each list is replayed step by step. */
class GearChangesTest {
    private static Project project(LoadBuilder... loads) {
        return aProject()
                .supply(aSupply().ratedAmps(63))
                .panels(
                        aPanel("P1").slots(8).ratedAmps(63),
                        aPanel("P2").slots(8).ratedAmps(63))
                .boards(aBoard("B1").in("P1"), aBoard("B2").in("P2"))
                .loads(loads)
                .build();
    }

    private static LoadBuilder amp(String id) {
        return aLoad(id).amplifier().runningAmps(3);
    }

    private static Plan plan(AssignmentBuilder... seats) {
        return aPlan().board("B1", 0, 1).board("B2", 2, 1).assignments(seats).build();
    }

    private static AssignmentBuilder seat(String load, String panel, int slot, int output, Phase... phases) {
        return anAssignment(load).at(panel, slot, phases).on("P1".equals(panel) ? "B1" : "B2", output);
    }

    private static WorkOrder order(Project now, Plan built, Plan target, Optional<Project> was) {
        return new OrderOfWork(BuiltPlant.of(now, built, was), target, NightLimits.NONE).withAtLeast(1);
    }

    private static List<String> steps(WorkOrder order, String load) {
        return order.stages().stream()
                .flatMap(stage -> stage.steps().stream())
                .filter(step -> step.load().filter(load::equals).isPresent())
                .map(step -> step.kind().name())
                .toList();
    }

    private static List<String> messages(List<Breach> breaches) {
        return breaches.stream().map(Breach::message).toList();
    }

    @Nested
    class GearThatIsGone {
        private final Project now = project(amp("near"), amp("far"));
        private final Plan built = plan(
                seat("near", "P1", 1, 1, Phase.A), seat("far", "P2", 1, 1, Phase.A), seat("old", "P1", 3, 2, Phase.B));
        private final Plan target = plan(seat("near", "P1", 1, 1), seat("far", "P2", 1, 1));

        @Test
        void leavesItsOutputAndItsSlotDeadAndNeverComesOnAgain() {
            WorkOrder order = order(now, built, target, Optional.empty());

            assertThat(steps(order, "old")).containsExactly("LOCK_OUT", "REMOVE_LEAD", "REMOVE");
            assertThat(order.stages())
                    .singleElement()
                    .satisfies(stage -> assertThat(stage.deadPanels()).containsExactly("P1"));
            assertThat(order.breaches()).isEmpty();
            assertThat(Changes.seats(order.stages().get(0).after())).doesNotContainKey("old");
        }

        @Test
        void isMissedByTheReplayWhereItsBreakerStays() {
            BuiltPlant plant = BuiltPlant.of(now, built, Optional.empty());

            assertThat(messages(Replay.of(plant, target, List.of(), Set.of())))
                    .contains("load 'old' is gone, but its breaker or its lead is still there.");
        }

        @ParameterizedTest
        @ValueSource(strings = {"REMOVE", "REMOVE_LEAD"})
        void isMissedByTheReplayWhereAPartOfItStays(String left) {
            assertThat(messages(replayedWithout(left))).anyMatch(each -> each.contains("is still there"));
        }

        @Test
        void isNotTakenOutOfALivePanel() {
            assertThat(messages(replayedWithout("ISOLATE_PANEL")))
                    .anyMatch(each -> each.contains("breaker of load 'old' is worked on in panel 'P1', which is live"));
        }

        @Test
        void isNotTakenOutUnderVoltageOfItsOwn() {
            assertThat(messages(replayedWithout("LOCK_OUT")))
                    .anyMatch(each -> each.contains("'old' is worked on without being off and locked out"));
        }

        private List<Breach> replayedWithout(String kind) {
            BuiltPlant plant = BuiltPlant.of(now, built, Optional.empty());
            WorkStage stage =
                    order(now, built, target, Optional.empty()).stages().get(0);
            return Replay.of(
                    plant,
                    target,
                    List.of(less(stage, step -> step.kind().name().equals(kind))),
                    Set.of());
        }

        /** What nobody describes is in no figure, so nothing comes to other lines while it still draws. */
        @Test
        void isOutBeforeAnythingGoesToOtherLines() {
            Plan moved = plan(seat("near", "P1", 1, 1), seat("far", "P2", 3, 1));

            WorkOrder order = order(now, built, moved, Optional.empty());

            assertThat(order.breaches()).isEmpty();
            assertThat(order.stages().get(0).lockedOut()).contains("old");
        }

        @Test
        void isMissedByTheReplayWhereALoadGoesToOtherLinesFirst() {
            Plan moved = plan(seat("near", "P1", 1, 1), seat("far", "P2", 3, 1));
            BuiltPlant plant = BuiltPlant.of(now, built, Optional.empty());
            List<WorkStage> stages =
                    new ArrayList<>(order(now, built, moved, Optional.empty()).stages());
            assertThat(stages).hasSize(2);
            Collections.reverse(stages);

            assertThat(messages(Replay.of(plant, moved, stages, Set.of())))
                    .anyMatch(each -> each.contains("while load 'old' is there, whose current nobody states"));
        }

        /** With the project as it was, its current counts until it is out: 30 A and 40 A are more than 63 A on one line. */
        @Test
        void countsWithItsCurrentWhereTheProjectAsItWasSaysIt() {
            Project was = project(amp("near"), amp("far"), amp("old").runningAmps(30));
            Project big = project(amp("near"), amp("far").runningAmps(40));
            Plan moved = plan(seat("near", "P1", 1, 1), seat("far", "P2", 3, 1));

            WorkOrder order = order(big, built, moved, Optional.of(was));

            assertThat(order.breaches()).isEmpty();
            assertThat(order.stages().get(0).lockedOut()).contains("old");
            List<WorkStage> reversed = new ArrayList<>(order.stages());
            Collections.reverse(reversed);
            assertThat(Replay.of(BuiltPlant.of(big, built, Optional.of(was)), moved, reversed, Set.of()))
                    .anySatisfy(breach -> assertThat(breach.found().rule()).isIn("rating", "neutral"));
        }
    }

    @Nested
    class GearThatIsReplaced {
        /** One pole as built in slot 1; two poles now, which reach into slot 3, where the neighbour is. */
        private final Project now =
                project(amp("new").twoPole(), amp("next"), amp("after").comesAfter("new"));

        private final Plan built = plan(
                seat("new", "P1", 1, 1, Phase.A),
                seat("next", "P1", 3, 2, Phase.B),
                seat("after", "P2", 1, 1, Phase.A));
        private final Plan target = plan(seat("new", "P1", 1, 1), seat("next", "P1", 5, 2), seat("after", "P2", 1, 1));

        @Test
        void isTwoBreakersOfWhichOneComesOutBeforeTheOtherGoesIn() {
            WorkOrder order = order(now, built, target, Optional.empty());

            assertThat(order.breaches()).isEmpty();
            assertThat(steps(order, "new (as built)")).contains("REMOVE");
            assertThat(steps(order, "new")).contains("PUT_IN", "RE_LAND", "FUNCTION_TEST");
            List<WorkStepKind> kinds =
                    order.stages().get(0).steps().stream().map(WorkStep::kind).toList();
            assertThat(kinds.indexOf(WorkStepKind.REMOVE)).isLessThan(kinds.indexOf(WorkStepKind.PUT_IN));
        }

        @Test
        void neverSharesASlotOnTheWay() {
            WorkStage stage =
                    order(now, built, target, Optional.empty()).stages().get(0);
            WorkStage kept = less(stage, step -> step.kind() == WorkStepKind.REMOVE);

            assertThat(messages(
                            Replay.of(BuiltPlant.of(now, built, Optional.empty()), target, List.of(kept), Set.of())))
                    .anyMatch(each -> each.contains("where the breaker of load 'new (as built)' is"));
        }

        @Test
        void takesOffWhatWaitsForIt() {
            WorkStage stage =
                    order(now, built, target, Optional.empty()).stages().get(0);

            assertThat(stage.standingBy()).contains("after");
        }

        @Test
        void isKnownByItsRatingWhereTheProjectAsItWasSaysIt() {
            Project was = project(amp("new").breakerAmps(16), amp("next"), amp("after"));
            Project rated = project(amp("new").breakerAmps(32), amp("next"), amp("after"));

            assertThat(BuiltPlant.of(rated, built, Optional.of(was)).gone()).containsExactly("new (as built)");
            assertThat(BuiltPlant.of(rated, built, Optional.of(was)).unknown()).isEmpty();
            assertThat(BuiltPlant.of(was, built, Optional.of(was)).gone()).isEmpty();
        }
    }

    @Nested
    class GearThatIsAdded {
        @Test
        void getsABreakerThatIsPutInDead() {
            Project now = project(amp("near"), amp("new"));
            Plan built = plan(seat("near", "P1", 1, 1, Phase.A));
            Plan target = plan(seat("near", "P1", 1, 1), seat("new", "P1", 2, 2));

            WorkOrder order = order(now, built, target, Optional.empty());

            assertThat(steps(order, "new"))
                    .containsExactly("LOCK_OUT", "PUT_IN", "RE_LAND", "ENERGISE", "FUNCTION_TEST");
            assertThat(order.breaches()).isEmpty();
        }

        @Test
        void mayTakeThePlaceOfGearThatIsGone() {
            Project now = project(amp("near"), amp("new"));
            Plan built = plan(seat("near", "P1", 1, 1, Phase.A), seat("old", "P1", 3, 2, Phase.B));
            Plan target = plan(seat("near", "P1", 1, 1), seat("new", "P1", 2, 2));

            WorkOrder order = order(now, built, target, Optional.empty());

            assertThat(order.stages()).hasSize(1);
            assertThat(order.breaches()).isEmpty();
        }
    }

    @Nested
    class ALoad {
        @Test
        void isSplitByOneThatGoesAndTwoThatCome() {
            Project now = project(amp("rack-1"), amp("rack-2"));
            Plan built = plan(seat("rack", "P1", 1, 1, Phase.A));
            Plan target = plan(seat("rack-1", "P1", 1, 1), seat("rack-2", "P1", 2, 2));

            WorkOrder order = order(now, built, target, Optional.empty());

            assertThat(order.breaches()).isEmpty();
            assertThat(order.cost().isolations()).isEqualTo(1);
        }

        @Test
        void isJoinedByTwoThatGoAndOneThatComes() {
            Project now = project(amp("rack").twoPole());
            Plan built = plan(seat("rack-1", "P1", 1, 1, Phase.A), seat("rack-2", "P1", 3, 2, Phase.B));
            Plan target = plan(seat("rack", "P1", 1, 1));

            WorkOrder order = order(now, built, target, Optional.empty());

            assertThat(order.breaches()).isEmpty();
            assertThat(order.cost().isolations()).isEqualTo(1);
        }
    }

    @Nested
    class TheFront {
        @Test
        void takesOutWhatIsGoneWhereNothingElseIsToBeDone() {
            Project now = project(amp("near"));
            Plan built = plan(seat("near", "P1", 1, 1, Phase.A), seat("old", "P1", 3, 2, Phase.B));

            Front front = Front.of(BuiltPlant.of(now, built, Optional.empty()), List.of());

            assertThat(front.cureOnly().moves()).isZero();
            assertThat(front.cureOnly().changes().removals())
                    .singleElement()
                    .extracting(Removal::load)
                    .isEqualTo("old");
            assertThat(front.cureOnly().night().count(MoveKind.REMOVAL)).isEqualTo(1);
            assertThat(front.cureOnly().violations()).isZero();
        }

        /** What goes anyway takes its current with it, and proves of nobody else that it has to move. */
        @Test
        void provesNothingFromWhatIsGone() {
            Project was = project(amp("near"), amp("old").runningAmps(200));
            Project now = project(amp("near"));
            Plan built = plan(seat("near", "P1", 1, 1, Phase.A), seat("old", "P1", 4, 2, Phase.A));

            Front front = Front.of(BuiltPlant.of(now, built, Optional.of(was)), List.of());

            assertThat(front.asBuilt().violations()).isPositive();
            assertThat(front.leastBreakers()).isZero();
        }
    }

    @Nested
    class PlantsDrawnAtRandom {
        /** One load is gone, one has another pole, one is new; the lists have no step on what is live, and end as planned. */
        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {1, 4, 6})
        void areReworkedWithoutALiveStep(long seed) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project was = planted.project();
            Project now = changed(was, seed);
            Plan target = Reworked.plan(now, 400);
            for (Optional<Project> before : List.of(Optional.of(was), Optional.<Project>empty())) {
                BuiltPlant plant = BuiltPlant.of(now, planted.plan(), before);

                WorkOrder order = new OrderOfWork(plant, target, NightLimits.NONE).withAtLeast(1);

                assertThat(plant.gone()).isNotEmpty();
                assertThat(order.breaches())
                        .filteredOn(breach -> breach.found().rule().equals(WorkKind.RULE))
                        .isEmpty();
                assertThat(Changes.between(new ProjectIndex(now), last(order), target)
                                .moves())
                        .isZero();
                assertThat(Changes.seats(last(order)).keySet()).doesNotContainAnyElementsOf(plant.gone());
            }
        }

        private static Plan last(WorkOrder order) {
            return order.stages().get(order.stages().size() - 1).after();
        }

        private static Project changed(Project was, long seed) {
            Random random = new Random(seed);
            List<Load> loads = new ArrayList<>(was.loads());
            String gone = loads.remove(random.nextInt(loads.size())).id();
            loads.replaceAll(load -> load.with()
                    .comesAfter(without(load.comesAfter(), gone))
                    .apartFrom(without(load.apartFrom(), gone))
                    .samePhaseAs(without(load.samePhaseAs(), gone))
                    .build());
            int other = random.nextInt(loads.size());
            Load one = loads.get(other);
            loads.set(other, one.withBreakerAmps(one.breakerAmps() + 4));
            loads.add(one.with()
                    .id("added")
                    .comesAfter(List.of())
                    .apartFrom(List.of())
                    .samePhaseAs(List.of())
                    .fixed(FixedPlace.NONE)
                    .runningAmps(0.1)
                    .idleAmps(0.1)
                    .inrushPeakAmps(OptionalDouble.empty())
                    .build());
            return was.withLoads(loads);
        }

        private static List<String> without(List<String> ids, String gone) {
            return ids.stream().filter(id -> !id.equals(gone)).toList();
        }
    }

    private static WorkStage less(WorkStage stage, Predicate<WorkStep> left) {
        return new WorkStage(
                stage.isSystemOff(),
                stage.deadPanels(),
                stage.deadBoards(),
                stage.lockedOut(),
                stage.standingBy(),
                stage.outages(),
                stage.steps().stream().filter(left.negate()).toList(),
                stage.after(),
                stage.brokenAfter());
    }
}
