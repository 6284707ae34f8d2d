package evenrise.solver.tidy;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import evenrise.model.ARandomProject;
import evenrise.model.LoadBuilder;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.FreeSlots;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Rewiring;
import evenrise.model.rules.Verdict;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TidyingTest {
    private static Plan tidy(Project project, Plan plan) {
        return Tidying.of(project, plan, Optional.empty(), false);
    }

    /** Slots by load. */
    private static Map<String, Integer> slots(Plan plan) {
        Map<String, Integer> slots = new HashMap<>();
        plan.assignments().forEach(each -> slots.put(each.load(), each.slot()));
        return slots;
    }

    private static Map<String, Integer> outputs(Plan plan) {
        Map<String, Integer> outputs = new HashMap<>();
        plan.assignments()
                .forEach(each -> outputs.put(each.load(), each.output().orElseThrow()));
        return outputs;
    }

    private static LoadBuilder amp(String id) {
        return aLoad(id).amplifier().runningAmps(8).inrushPeakAmps(90);
    }

    /** Four equal amplifiers on phases A, A, B, C of one panel, switched in some order. */
    private static Project fourAmplifiers(LoadBuilder third) {
        return aProject()
                .panels(aPanel("P1").slots(12))
                .boards(aBoard("B1").in("P1"))
                .loads(amp("amp-1"), amp("amp-2"), third, amp("amp-10"))
                .build();
    }

    private static Plan backwards() {
        return aPlan().board("B1", 0, 1)
                .assignments(
                        anAssignment("amp-1").at("P1", 5, Phase.A).on("B1", 1),
                        anAssignment("amp-2").at("P1", 3, Phase.A).on("B1", 2),
                        anAssignment("amp-3").at("P1", 2, Phase.A).on("B1", 3),
                        anAssignment("amp-10").at("P1", 1, Phase.A).on("B1", 4))
                .build();
    }

    @Nested
    class EqualLoads {
        @Test
        void riseAlongTheSlotsAndOnOnePhaseAlongTheOutputs() {
            Plan tidy = tidy(fourAmplifiers(amp("amp-3")), backwards());

            assertThat(slots(tidy)).isEqualTo(Map.of("amp-1", 1, "amp-2", 2, "amp-3", 3, "amp-10", 5));
            assertThat(outputs(tidy)).isEqualTo(Map.of("amp-1", 3, "amp-2", 4, "amp-3", 2, "amp-10", 1));
        }

        @Test
        void leaveOneThatIsPinnedToItsSlotWhereItIs() {
            Plan tidy = tidy(fourAmplifiers(amp("amp-3").fixedSlot(2)), backwards());

            assertThat(slots(tidy)).containsEntry("amp-3", 2);
            assertThat(slots(tidy)).isEqualTo(Map.of("amp-1", 1, "amp-2", 3, "amp-3", 2, "amp-10", 5));
        }

        @Test
        void thatAnEarlierPlanHasPlacedStay() {
            Project project = fourAmplifiers(amp("amp-3"));

            Plan tidy = Tidying.of(project, backwards(), Optional.of(backwards()), true);

            assertThat(tidy).isEqualTo(backwards());
        }

        @Test
        void thatAreNewRiseAmongTheirOwnPlaces() {
            Project project = fourAmplifiers(amp("amp-3"));
            Plan earlier = backwards().withAssignments(backwards().assignments().subList(2, 3));

            Plan tidy = Tidying.of(project, backwards(), Optional.of(earlier), true);

            assertThat(slots(tidy)).isEqualTo(Map.of("amp-1", 1, "amp-2", 3, "amp-3", 2, "amp-10", 5));
            assertThat(Rewiring.of(Layout.of(project, tidy), earlier)).isEqualTo(new Rewiring(0, 0, 0));
        }
    }

    @Nested
    class FreeSlotsOfAPanel {
        /** Phases A, B and C have two free slots each, none above another: slots 1 to 12 lie in rows of two. */
        private final Project project = aProject()
                .panels(aPanel("P1").slots(12))
                .loads(IntStream.rangeClosed(1, 6)
                        .mapToObj(i -> aLoad("L" + i).unswitched().runningAmps(i))
                        .toArray(LoadBuilder[]::new))
                .build();

        private final int[] taken = {1, 4, 5, 8, 9, 12};

        private Plan scattered() {
            Plan plan = aPlan().build();
            return plan.withAssignments(IntStream.range(0, 6)
                    .mapToObj(i -> Assignment.builder()
                            .load("L" + (i + 1))
                            .panel("P1")
                            .slot(taken[i])
                            .phases(List.of())
                            .build())
                    .toList());
        }

        private int room(Plan plan) {
            Panel panel = project.panels().get(0);
            return FreeSlots.of(panel, Layout.of(project, plan)).breakers(3);
        }

        @Test
        void lieTogetherSoThatThreePolesFit() {
            Plan tidy = tidy(project, scattered());

            assertThat(room(scattered())).isZero();
            assertThat(room(tidy)).isEqualTo(2);
        }

        @Test
        void stayWhereTheyAreWhereEveryBreakerIsPlacedAlready() {
            assertThat(Tidying.of(project, scattered(), Optional.of(scattered()), true))
                    .isEqualTo(scattered());
        }

        @Test
        void keepEachLoadOnItsPhases() {
            Plan before = PlanFinisher.timed(project, scattered());

            Plan tidy = PlanFinisher.timed(project, tidy(project, scattered()));

            assertThat(tidy.assignments())
                    .extracting(Assignment::load, Assignment::phases)
                    .isEqualTo(before.assignments().stream()
                            .map(each -> tuple(each.load(), each.phases()))
                            .toList());
        }
    }

    @Nested
    @Tag("random")
    class AnyPlant {
        /** Loads of a kind are given the same figures, so that many are alike; the plan may break rules then. */
        private Project evened(Project project) {
            Map<List<Object>, Load> firsts = new HashMap<>();
            return project.withLoads(project.loads().stream()
                    .map(load -> {
                        Load like = firsts.computeIfAbsent(
                                List.of(load.role(), load.poles(), load.switched(), load.shutdownGroup()), any -> load);
                        return load.with()
                                .breakerAmps(like.breakerAmps())
                                .curve(like.curve())
                                .runningAmps(like.runningAmps())
                                .idleAmps(like.idleAmps())
                                .powerFactor(like.powerFactor())
                                .thirdHarmonic(like.thirdHarmonic())
                                .inrushPeakAmps(like.inrushPeakAmps())
                                .inrushHalfMillis(like.inrushHalfMillis())
                                .settleSeconds(like.settleSeconds())
                                .circuit(like.circuit())
                                .equipment(like.equipment())
                                .rideThrough(like.rideThrough())
                                .crestFactor(like.crestFactor())
                                .leading(like.leading())
                                .panels(like.panels())
                                .needsGroups(like.needsGroups())
                                .build();
                    })
                    .toList());
        }

        @ParameterizedTest(name = "{0}")
        @MethodSource("evenrise.solver.tidy.TidyingTest#seeds")
        void isJudgedTheSameAfterwardsAndDoesNotChangeAgain(long seed) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project project = evened(planted.project());
            Plan before = PlanFinisher.timed(project, planted.plan());

            Plan tidy = tidy(project, before);

            assertSameVerdict(
                    Referee.judge(project, before), Referee.judge(project, PlanFinisher.timed(project, tidy)));
            assertThat(NeighbouringPairs.of(project, tidy).backAlongSlots())
                    .isLessThanOrEqualTo(NeighbouringPairs.of(project, before).backAlongSlots());
            assertThat(tidy(project, tidy)).isEqualTo(tidy);
        }
    }

    static IntStream seeds() {
        return IntStream.rangeClosed(1, Integer.getInteger("evenrise.plants", 40));
    }

    static void assertSameVerdict(Verdict before, Verdict after) {
        Offset<Double> rounding =
                Offset.offset(1e-9 * Math.max(1, before.metrics().objective()));
        assertThat(after.metrics().objective()).isCloseTo(before.metrics().objective(), rounding);
        assertThat(after.metrics().peakInrushAmps()).isCloseTo(before.metrics().peakInrushAmps(), rounding);
        assertThat(after.metrics().durationSeconds()).isEqualTo(before.metrics().durationSeconds());
        assertThat(after.metrics().boardsUsed()).isEqualTo(before.metrics().boardsUsed());
        assertThat(after.violations()).hasSameSizeAs(before.violations());
        assertThat(after.violations())
                .extracting(BrokenRule::rule)
                .containsExactlyInAnyOrderElementsOf(
                        before.violations().stream().map(BrokenRule::rule).toList());
    }
}
