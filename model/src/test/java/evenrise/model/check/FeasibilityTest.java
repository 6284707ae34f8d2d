package evenrise.model.check;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.TestBehaviour;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Each condition is met at exactly its limit and broken just beyond; projects with a known plan break none. */
class FeasibilityTest {
    private static List<String> impossible(ProjectBuilder project) {
        Project built = project.build();
        assertThat(ProjectChecks.errors(built)).isEmpty();
        return Feasibility.impossible(built).stream().map(Objection::pointer).toList();
    }

    private static List<LoadBuilder> loads(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(n -> aLoad("L" + n).runningAmps(1))
                .toList();
    }

    /** Such a project is drawn around a plan that keeps every rule, so a finding would be a false one. */
    @Property(tries = 3000, seed = "20261125")
    void findsNothingInAProjectThatHasAPlan(@ForAll long seed) {
        assertThat(Feasibility.impossible(ARandomProject.of(seed))).isEmpty();
    }

    @Nested
    class OfAProjectWithAKnownPlan {
        @Test
        void neverFindsAnythingWhateverPartsAreInDoubt() {
            Random random = new Random(11);
            for (long seed = 0; seed < 600; seed++) {
                Project project = ARandomProject.of(seed);
                Set<String> errors = new HashSet<>();
                for (int n = 1 + random.nextInt(4); n > 0; n--) {
                    errors.add(List.of(
                                    "/loads/" + random.nextInt(project.loads().size()) + "/role",
                                    "/panels/" + random.nextInt(project.panels().size()),
                                    "/boards/" + random.nextInt(9) + "/type",
                                    "/board_types/0/outputs",
                                    "/shutdown_groups/0/id",
                                    "/supply/rated_a",
                                    "/max_duration_s")
                            .get(random.nextInt(7)));
                }

                assertThat(Feasibility.impossible(project, errors))
                        .as("seed %d, %s", seed, errors)
                        .isEmpty();
            }
        }
    }

    @Test
    void takesMoreLoadsThanABoardCanHaveOutputs() {
        ProjectBuilder project = aProject().boards(aBoard("B1"), aBoard("B2")).loads(loads(1001));

        assertThat(Feasibility.impossible(project.build(), Set.of("/boards/0/type", "/board_types/0/price")))
                .extracting(Objection::pointer)
                .contains("/panels/0");
    }

    @Nested
    class ASlotForEachLoad {
        @Test
        void isMissingWhereNoRunOfSlotsIsFree() {
            ProjectBuilder free = aProject()
                    .panels(aPanel().slots(6))
                    .loads(aLoad("x").unswitched().threePole());
            ProjectBuilder blocked = aProject()
                    .panels(aPanel().slots(6).reservedSlots(3, 4))
                    .loads(aLoad("x").unswitched().threePole());

            assertThat(impossible(free)).isEmpty();
            assertThat(impossible(blocked)).containsExactly("/loads/0");
        }

        @Test
        void isMissingWhereTheRotationRepeatsAPhase() {
            assertThat(impossible(aProject()
                            .panels(aPanel().phaseRotation(Phase.A, Phase.A, Phase.B))
                            .loads(aLoad("x").unswitched().threePole())))
                    .containsExactly("/loads/0");
        }

        @Test
        void isMissingWhereAnotherLoadIsFixedInTheOnlyRun() {
            LoadBuilder fixed = aLoad("fixed").unswitched().fixedPanel("P1").fixedSlot(2);
            LoadBuilder wide = aLoad("wide").unswitched().threePole();

            assertThat(impossible(aProject().panels(aPanel().slots(5)).loads(wide, fixed)))
                    .isEmpty();
            assertThat(impossible(aProject()
                            .panels(aPanel().slots(5).reservedSlots(1))
                            .loads(wide, fixed)))
                    .containsExactly("/loads/0");
        }

        @Test
        void isMissingForASwitchedLoadWhereNoSlotTakesOne() {
            ProjectBuilder project = aProject()
                    .panels(aPanel().slots(4).switchedSlots(1, 2))
                    .boards(aBoard())
                    .loads(aLoad("one"), aLoad("two").twoPole());

            assertThat(impossible(project)).containsExactly("/loads/1");
        }

        @Test
        void isMissingWhereNoBoardReaches() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .boards(aBoard("B1"))
                    .loads(
                            aLoad("near"),
                            aLoad("far").panels("P2"),
                            aLoad("plain").unswitched().panels("P2"));

            assertThat(impossible(project)).containsExactly("/loads/1");
        }

        @Test
        void isMissingWhereTheFixedSlotIsReserved() {
            assertThat(impossible(aProject()
                            .panels(aPanel().reservedSlots(7))
                            .loads(aLoad().unswitched().fixedPanel("P1").fixedSlot(7))))
                    .containsExactly("/loads/0");
        }

        @Test
        void isMissingWhereTheLoadAloneExceedsThePanel() {
            ProjectBuilder at =
                    aProject().panels(aPanel("P1").ratedAmps(50), aPanel("P2").ratedAmps(10));

            // 0.8 · 50 A = 40 A
            assertThat(impossible(at.loads(aLoad("x").unswitched().runningAmps(40))))
                    .isEmpty();
            assertThat(impossible(at.loads(aLoad("y").unswitched().runningAmps(40.001))))
                    .containsExactly("/loads/1");
        }

        @Test
        void isMissingWhereTheLoadAlonePeaksOverThePanelsLimit() {
            ProjectBuilder project = aProject()
                    .panels(aPanel().inrushLimitAmps(100))
                    .boards(aBoard())
                    .loads(
                            aLoad("x").runningAmps(1).inrushPeakAmps(100),
                            aLoad("y").runningAmps(1).inrushPeakAmps(101));

            assertThat(impossible(project)).containsExactly("/loads/1");
        }
    }

    @Nested
    class SlotsForAllLoads {
        @Test
        void areTooFewInAll() {
            ProjectBuilder project =
                    aProject().panels(aPanel("P1").slots(3), aPanel("P2").slots(2));
            loads(5).forEach(load -> project.loads(load.unswitched()));

            assertThat(impossible(project)).isEmpty();
            assertThat(impossible(project.loads(aLoad("more").unswitched()))).containsExactly("/panels");
        }

        @Test
        void areTooFewInOnePanelThatMustTakeThem() {
            ProjectBuilder project = aProject().panels(aPanel("P1").slots(3), aPanel("P2"));
            loads(4).forEach(load -> project.loads(load.unswitched().panels("P1")));

            assertThat(impossible(project)).containsExactly("/panels/0");
        }

        @Test
        void areTooFewForSwitchedLoads() {
            ProjectBuilder project =
                    aProject().panels(aPanel().switchedSlots(1, 2, 3)).boards(aBoard());

            assertThat(impossible(project.loads(loads(3)))).isEmpty();
            assertThat(impossible(project.loads(aLoad("more")))).containsExactly("/panels/0");
        }
    }

    @Nested
    class OutputsForAllLoads {
        @Test
        void areTooFew() {
            ProjectBuilder project = aProject().boards(aBoard());

            assertThat(impossible(project.loads(loads(8)))).isEmpty();
            assertThat(impossible(project.loads(aLoad("more").runningAmps(1)))).containsExactly("/boards/0");
        }

        @Test
        void areTooFewOnTheBoardsThatReach() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .boards(aBoard("B1"), aBoard("B2").in("P2"), aBoard("B3").in("P2"));
            loads(9).forEach(load -> project.loads(load.panels("P1")));

            assertThat(impossible(project)).containsExactly("/boards/0");
        }

        @Test
        void areTooFewWhereThereIsNoBoard() {
            assertThat(impossible(aProject().loads(aLoad("a"), aLoad("b")))).containsExactly("/boards");
        }
    }

    @Nested
    class BoardsForAGroup {
        private ProjectBuilder grouped(int count) {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .boards(aBoard("B1"), aBoard("B2").in("P2"))
                    .groups(aGroup("stage"));
            return project.loads(
                    loads(count).stream().map(load -> load.group("stage")).toList());
        }

        @Test
        void areThereForAsManyLoadsAsABoardTakes() {
            assertThat(impossible(grouped(8))).isEmpty();
        }

        @Test
        void areThereForALargerGroupAlone() {
            assertThat(impossible(grouped(16))).isEmpty();
        }

        @Test
        void areMissingWhereALoadOfAnotherGroupIsFixedOnOne() {
            assertThat(impossible(grouped(9)
                            .groups(aGroup("front"))
                            .loads(aLoad("x").runningAmps(1).group("front").fixedBoard("B2"))))
                    .containsExactly("/shutdown_groups/0");
        }

        @Test
        void areMissingWhereNoBoardReachesAllTheirPanels() {
            ProjectBuilder project = grouped(1)
                    .loads(
                            aLoad("a").group("stage").panels("P1"),
                            aLoad("b").group("stage").panels("P2"));

            assertThat(impossible(project)).containsExactly("/shutdown_groups/0");
            assertThat(impossible(project.boards(aBoard("B3").reaches("P1", "P2"))))
                    .isEmpty();
        }

        @Test
        void areMissingWhereItsLoadsAreFixedToDifferentOnes() {
            assertThat(impossible(grouped(1)
                            .loads(
                                    aLoad("a").group("stage").fixedBoard("B1"),
                                    aLoad("b").group("stage").fixedBoard("B2"))))
                    .containsExactly("/shutdown_groups/0");
        }

        @Test
        void areMissingWhereTheOnlyOneHoldsALoadOfTheOtherEmergencyClass() {
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"), aBoard("B2"))
                    .groups(aGroup("stage"))
                    .loads(
                            aLoad("a").group("stage").fixedBoard("B1"),
                            aLoad("holds").fixedBoard("B1"));

            assertThat(impossible(project)).contains("/shutdown_groups/0", "/loads/1/fixed/board");
        }

        @Test
        void areMissingWhereOnePanelMustTakeThemAndNoneCan() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1").slots(2), aPanel("P2").slots(2))
                    .boards(aBoard("B1").reaches("P1", "P2"))
                    .groups(aGroup("stage").samePanel())
                    .loads(aLoad("a").group("stage"), aLoad("b").group("stage"));

            assertThat(impossible(project)).isEmpty();
            assertThat(impossible(project.loads(aLoad("c").group("stage")))).containsExactly("/shutdown_groups/0");
        }

        @Test
        void areMissingWhereOnePanelMustTakeLoadsThatMustBeApart() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .boards(aBoard("B1").reaches("P1", "P2"))
                    .groups(aGroup("stage").samePanel())
                    .loads(aLoad("a").group("stage"), aLoad("b").group("stage").apartFrom("a"));

            assertThat(impossible(project)).containsExactly("/shutdown_groups/0");
        }
    }

    @Nested
    class EmergencyClassesOfLoads {
        @Test
        void needABoardEach() {
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"))
                    .groups(aGroup("stage"))
                    .loads(aLoad("drops").group("stage"), aLoad("holds"));

            assertThat(impossible(project)).containsExactly("/boards");
            assertThat(impossible(project.boards(aBoard("B2")))).isEmpty();
        }
    }

    @Nested
    class Ratings {
        @Test
        void ofTheSupplyCarryTheMeanOfThePhases() {
            ProjectBuilder project = aProject()
                    .supply(aSupply().ratedAmps(50))
                    .loads(
                            aLoad("a").unswitched().runningAmps(40),
                            aLoad("b").unswitched().runningAmps(40),
                            aLoad("c").unswitched().runningAmps(40));

            // (40 + 40 + 40) / 3 = 40 = 0.8 · 50
            assertThat(impossible(project)).isEmpty();
            assertThat(impossible(project.loads(aLoad("d").unswitched().runningAmps(0.01))))
                    .containsExactly("/supply/rated_a");
        }

        @Test
        void ofTheSupplyCarryTheLargestLoad() {
            assertThat(impossible(aProject()
                            .supply(aSupply().ratedAmps(50))
                            .loads(aLoad("a").unswitched().runningAmps(40.1))))
                    .containsExactly("/supply/rated_a");
        }

        @Test
        void ofAPanelCarryWhatMustSitInIt() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1").ratedAmps(50), aPanel("P2"))
                    .loads(
                            aLoad("a").unswitched().panels("P1").threePole().runningAmps(30),
                            aLoad("b").unswitched().threePole().runningAmps(30));

            assertThat(impossible(project)).isEmpty();
            assertThat(impossible(project.loads(
                            aLoad("c").unswitched().panels("P1").threePole().runningAmps(11))))
                    .containsExactly("/panels/0/rated_a");
        }

        @Test
        void ofAllPanelsCarryAllLoads() {
            ProjectBuilder project =
                    aProject().panels(aPanel("P1").ratedAmps(50), aPanel("P2").ratedAmps(50));
            for (int n = 0; n < 3; n++) {
                project.loads(aLoad("L" + n).unswitched().threePole().runningAmps(28));
            }

            // 3 · 3 · 28 = 252 over 2 · 3 · 40 = 240
            assertThat(impossible(project)).containsExactly("/panels");
        }

        @Test
        void ofTheNeutralCarryThirdHarmonicsWhichAddUpOnThreePhase() {
            ProjectBuilder project = aProject().supply(aSupply().ratedAmps(100).neutralFactor(0.5));
            for (int n = 0; n < 3; n++) {
                project.loads(aLoad("L" + n).unswitched().runningAmps(30).thirdHarmonic(0.75));
            }

            // I3 of each: 30 · 0.75 / √(1 + 0.75²) = 18, so 54 over 50
            assertThat(impossible(project)).containsExactly("/supply/neutral_factor");
            assertThat(impossible(project.supply(aSupply().ratedAmps(100).neutralFactor(0.55))))
                    .isEmpty();
            assertThat(impossible(project.supply(
                            aSupply().ratedAmps(100).neutralFactor(0.5).splitPhase())))
                    .isEmpty();
        }
    }

    @Nested
    class InrushLimitsForEvents {
        private ProjectBuilder project(PlanEvent... events) {
            return aProject()
                    .behaviour(TestBehaviour.holdingFor(events))
                    .boards(aBoard())
                    .loads(
                            aLoad("a").unswitched().runningAmps(0).inrushPeakAmps(90),
                            aLoad("b").unswitched().runningAmps(0).inrushPeakAmps(90),
                            aLoad("c").unswitched().runningAmps(0).inrushPeakAmps(90),
                            aLoad("d").unswitched().runningAmps(0).inrushPeakAmps(30),
                            aLoad("e").runningAmps(0).inrushPeakAmps(60));
        }

        @Test
        void areAtLeastTheMeanOfWhatReturnsAtOnce() {
            // (3 · 90 + 30) / 3 = 100
            assertThat(impossible(project(PlanEvent.RETURN).supply(aSupply().inrushLimitAmps(100))))
                    .isEmpty();
            assertThat(impossible(project(PlanEvent.RETURN).supply(aSupply().inrushLimitAmps(99.9))))
                    .containsExactly("/supply/inrush_limit_a");
            assertThat(impossible(project().supply(aSupply().inrushLimitAmps(99.9))))
                    .isEmpty();
        }

        @Test
        void areAtLeastTheMeanOfAllInADeepDip() {
            // (3 · 90 + 30 + 60) / 3 = 120
            assertThat(impossible(project(PlanEvent.DIP).supply(aSupply().inrushLimitAmps(120))))
                    .isEmpty();
            assertThat(impossible(project(PlanEvent.DIP).supply(aSupply().inrushLimitAmps(119.9))))
                    .containsExactly("/supply/inrush_limit_a");
        }

        @Test
        void areAtLeastEachPeak() {
            ProjectBuilder project = aProject()
                    .behaviour(TestBehaviour.holdingFor(PlanEvent.RETURN))
                    .loads(aLoad("a").unswitched().runningAmps(0).inrushPeakAmps(90));

            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(90))))
                    .isEmpty();
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(89.9))))
                    .containsExactly("/supply/inrush_limit_a");
        }

        @Test
        void countWhatTheShowDrawsBesideTheInrush() {
            ProjectBuilder project = aProject()
                    .behaviour(TestBehaviour.holdingFor(PlanEvent.RETURN))
                    .loads(aLoad("a").unswitched().runningAmps(10).idleAmps(2).inrushPeakAmps(90));

            // √2·10 in use, and 90 − √2·2 of inrush: 14.142 + 87.172 = 101.314
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(101.32))))
                    .isEmpty();
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(101.31))))
                    .containsExactly("/supply/inrush_limit_a");
        }

        @Test
        void areAtLeastTheMeanInUseWhenABoardFails() {
            ProjectBuilder project = aProject()
                    .behaviour(TestBehaviour.holdingFor(PlanEvent.BOARD_FAILURE))
                    .boards(aBoard())
                    .loads(
                            aLoad("a").runningAmps(15).idleAmps(1),
                            aLoad("b").runningAmps(15).idleAmps(1),
                            aLoad("c").runningAmps(15).idleAmps(1));

            // three of √2·15 A over three phases
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(21.22))))
                    .isEmpty();
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(21.21))))
                    .containsExactly("/supply/inrush_limit_a");
        }
    }

    @Nested
    class InrushLimits {
        @Test
        void areAtLeastTheLargestPeak() {
            ProjectBuilder project = aProject()
                    .boards(aBoard())
                    .loads(
                            aLoad("a").runningAmps(1).inrushPeakAmps(300),
                            aLoad("b").runningAmps(1));

            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(300))))
                    .isEmpty();
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(299))))
                    .containsExactly("/supply/inrush_limit_a");
        }

        @Test
        void areAtLeastWhatStaysOn() {
            ProjectBuilder project = aProject();
            for (int n = 0; n < 6; n++) {
                project.loads(aLoad("L" + n).unswitched().runningAmps(10));
            }

            // 6 · 10 · √2 / 3 = 28.28
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(28.3))))
                    .isEmpty();
            assertThat(impossible(project.supply(aSupply().inrushLimitAmps(28.2))))
                    .containsExactly("/supply/inrush_limit_a");
        }
    }

    @Nested
    class Duration {
        private final ProjectBuilder waiting = aProject()
                .boardTypes(aBoardType().startDelaySeconds(1, 2).stepSeconds(0.5))
                .boards(aBoard("B1"), aBoard("B2"))
                .loads(
                        aLoad("dsp").processing().settleSeconds(10),
                        aLoad("slow").processing().comesAfter("dsp").settleSeconds(3),
                        aLoad("amp").amplifier());

        @Test
        void leavesTimeToSettle() {
            // on at 1, then 11, then 14
            assertThat(impossible(waiting.maxDurationSeconds(14))).isEmpty();
            assertThat(impossible(waiting.maxDurationSeconds(13.9))).containsExactly("/max_duration_s");
        }

        @Test
        void leavesTimeForAllOutputs() {
            ProjectBuilder project = aProject()
                    .boardTypes(aBoardType().startDelaySeconds(1).stepSeconds(0.5))
                    .boards(aBoard("B1"), aBoard("B2"))
                    .loads(loads(16));

            // two boards of 8: 1 + 7 · 0.5 = 4.5
            assertThat(impossible(project.maxDurationSeconds(4.5))).isEmpty();
            assertThat(impossible(project.maxDurationSeconds(4.4))).containsExactly("/max_duration_s");
        }

        @Test
        void isNeverEnoughWhereTheOrderContradictsTheRoles() {
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"))
                    .loads(
                            aLoad("amp").amplifier().settleSeconds(1),
                            aLoad("dsp").processing().comesAfter("amp"));

            assertThat(impossible(project)).containsExactly("/loads/1/comes_after");
        }

        @Test
        void isEnoughWhereAllMayComeOnAtOnce() {
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"), aBoard("B2"))
                    .loads(aLoad("amp").amplifier(), aLoad("dsp").processing().comesAfter("amp"));

            assertThat(impossible(project.maxDurationSeconds(0))).isEmpty();
        }
    }

    @Nested
    class KeepingApart {
        @Test
        void needsAPanelForEach() {
            ProjectBuilder project = aProject().panels(aPanel("P1"), aPanel("P2"));
            project.loads(
                    aLoad("a").unswitched().apartFrom("b", "c"),
                    aLoad("b").unswitched().apartFrom("c"),
                    aLoad("c").unswitched());

            assertThat(impossible(project)).containsExactly("/loads/0/apart_from");
            assertThat(impossible(project.panels(aPanel("P3")))).isEmpty();
        }

        @Test
        void needsPanelsThatTheLoadsMaySitIn() {
            ProjectBuilder project = aProject()
                    .panels(aPanel("P1"), aPanel("P2"))
                    .loads(
                            aLoad("a").unswitched().panels("P1"),
                            aLoad("b").unswitched().panels("P1").apartFrom("a"));

            assertThat(impossible(project)).containsExactly("/loads/0/apart_from");
        }

        @Test
        void isPossibleForAChainInTwoPanels() {
            assertThat(impossible(aProject()
                            .panels(aPanel("P1"), aPanel("P2"))
                            .loads(
                                    aLoad("a").unswitched().apartFrom("b"),
                                    aLoad("b").unswitched().apartFrom("c"),
                                    aLoad("c").unswitched())))
                    .isEmpty();
        }
    }

    @Test
    void samePhasesAreFixedAlike() {
        ProjectBuilder project =
                aProject().loads(aLoad("a").unswitched().fixedPanel("P1").fixedSlot(1));

        // rows of slots 1, 2, 7 have phases A, A, A; of slot 3 B
        assertThat(impossible(project.loads(
                        aLoad("b").unswitched().fixedPanel("P1").fixedSlot(2).samePhaseAs("a"),
                        aLoad("c").unswitched().fixedPanel("P1").fixedSlot(7).samePhaseAs("a"))))
                .isEmpty();
        assertThat(impossible(project.loads(
                        aLoad("d").unswitched().fixedPanel("P1").fixedSlot(3).samePhaseAs("a"))))
                .containsExactly("/loads/3/same_phase_as/0");
    }
}
