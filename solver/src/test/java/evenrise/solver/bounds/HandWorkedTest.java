package evenrise.solver.bounds;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Bounds;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Phase;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Cases small enough for pen and paper, where the bound is what a best plan comes to. */
class HandWorkedTest {
    private static final Offset<Double> ROUNDING = within(1e-6);

    /** A load that draws its peak for a moment, and then nothing. */
    private static LoadBuilder flash(String id, double peakAmps) {
        return aLoad(id).runningAmps(1).idleAmps(0).inrushPeakAmps(peakAmps).inrushHalfMillis(0.001);
    }

    /** A load with a base of {@code baseAmps} and an excess on top that is soon gone. */
    private static LoadBuilder lasting(String id, double baseAmps, double excessAmps) {
        return aLoad(id)
                .runningAmps(baseAmps)
                .idleAmps(baseAmps / Math.sqrt(2))
                .inrushPeakAmps(baseAmps + excessAmps)
                .inrushHalfMillis(0.001);
    }

    /** One phase, loads on boards of one output, that come on at 0, 1, …, {@code last} seconds. */
    private static ProjectBuilder onePhase(int last, LoadBuilder... loads) {
        double[] delays = IntStream.rangeClosed(0, last).asDoubleStream().toArray();
        ProjectBuilder project = aProject()
                .supply(aSupply().singlePhase())
                .boardTypes(
                        aBoardType("one").outputs(1).startDelaySeconds(delays).stepSeconds(1))
                .loads(loads);
        for (int i = 1; i <= loads.length; i++) {
            project.boards(aBoard("B" + i).type("one"));
        }
        return project;
    }

    private static Bounds of(ProjectBuilder project) {
        return ProvenBounds.of(project.build());
    }

    @Nested
    class ThePeak {
        @Test
        void isTheLargestLoadAloneWhereOthersAreSmall() {
            assertThat(of(onePhase(9, flash("a", 70), flash("b", 20))).peakInrushAmps())
                    .isCloseTo(70, ROUNDING);
        }

        @Test
        void isAllBasesAndTheLeastExcessWhereTimeIsPlenty() {
            // 10 + 20 + 30 of base; whichever comes last brings 40, 50 or 60 on top: 60 + 40.
            Bounds bounds = of(onePhase(50, lasting("a", 10, 50), lasting("b", 20, 40), lasting("c", 30, 60)));

            assertThat(bounds.peakInrushAmps()).isCloseTo(100, ROUNDING);
        }

        @Test
        void isWhatTheLastAmplifierFindsThoughOthersBringLess() {
            // The auxiliary load brings 1 only, but it is on before: 20 + 10 of base, and 40.
            Bounds bounds = of(onePhase(
                    9, lasting("aux", 20, 1).auxiliary(), lasting("amp", 10, 40).amplifier()));

            assertThat(bounds.peakInrushAmps()).isCloseTo(70, ROUNDING);
        }

        @Test
        void countsAnUnswitchedLoadsBaseFromTheBeginning() {
            Bounds bounds = of(
                    onePhase(9, flash("a", 30)).loads(lasting("always", 12, 99).unswitched()));

            assertThat(bounds.peakInrushAmps()).isCloseTo(42, ROUNDING);
        }

        @Test
        void isTheMeanOfTheInstantsWhereTimeIsShort() {
            // Eight flashes of 10 in 4 instants.
            LoadBuilder[] loads =
                    IntStream.range(0, 8).mapToObj(i -> flash("L" + i, 10)).toArray(LoadBuilder[]::new);

            assertThat(of(onePhase(3, loads)).peakInrushAmps()).isCloseTo(20, ROUNDING);
        }

        @Test
        void isAWholeNumberOfUnitsAndLeavesNoRoomBesideLargeLoads() {
            // Two instants for 6 + 6 + 6: a mean of 9, but one instant has two of them.
            assertThat(of(onePhase(1, flash("a", 6), flash("b", 6), flash("c", 6)))
                            .peakInrushAmps())
                    .isCloseTo(12, ROUNDING);
        }

        @Test
        void makesRoomForWhatComesBefore() {
            // 5 → 5 → 1 in two instants: the second 5 cannot join the first below 10, so the 1 joins it: 6.
            Bounds bounds = of(onePhase(
                    1,
                    flash("a", 5),
                    flash("b", 5).comesAfter("a"),
                    flash("c", 1).comesAfter("b")));

            assertThat(bounds.peakInrushAmps()).isCloseTo(6, ROUNDING);
        }

        @Test
        void countsTheExcessThatIsLeftOfOthers() {
            // 100 each, half of it gone in a second, at 0 and 1 s: the second finds 50.
            LoadBuilder first = flash("a", 100).inrushHalfMillis(1000);
            LoadBuilder second = flash("b", 100).inrushHalfMillis(1000);

            double peak = of(onePhase(1, first, second)).peakInrushAmps();

            // At best 150; the mean of both instants, weighted, proves (100 + 150)/2 and large loads prove no more.
            assertThat(peak).isBetween(125 - 1e-6, 150 + 1e-6);
        }

        @Test
        void isSharedByThePhases() {
            // Three loads of 10 + 5 on three phases, one instant: 15 each at best, and the mean is 15.
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"), aBoard("B2"), aBoard("B3"))
                    .loads(lasting("a", 10, 5), lasting("b", 10, 5), lasting("c", 10, 5))
                    .maxDurationSeconds(0);

            assertThat(of(project).peakInrushAmps()).isCloseTo(15, ROUNDING);
        }
    }

    @Nested
    class TheDuration {
        @Test
        void isTheSettlingRoundedUpToWhatBoardsCanDo() {
            // Settled after 1.9 s; boards come on at whole seconds.
            Bounds bounds = of(onePhase(
                    9,
                    flash("dsp", 5).processing().settleSeconds(1.9),
                    flash("amp", 5).amplifier()));

            assertThat(bounds.durationSeconds()).isCloseTo(2, ROUNDING);
        }

        @Test
        void forgivesHalfAMillisecond() {
            Bounds bounds = of(onePhase(
                    9,
                    flash("dsp", 5).processing().settleSeconds(2.0004),
                    flash("amp", 5).amplifier()));

            assertThat(bounds.durationSeconds()).isCloseTo(2, ROUNDING);
        }

        @Test
        void followsChainsOfLoadsThatWait() {
            Bounds bounds = of(onePhase(
                    9,
                    flash("a", 5).settleSeconds(2),
                    flash("b", 5).comesAfter("a").settleSeconds(3),
                    flash("c", 5).comesAfter("b")));

            assertThat(bounds.durationSeconds()).isCloseTo(5, ROUNDING);
        }

        @Test
        void isTheStepsOfAGroupOnItsBoard() {
            // Four loads on one board, three steps of 0.25 s.
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"), aBoard("B2"))
                    .groups(aGroup("g"))
                    .loads(IntStream.range(0, 4)
                            .mapToObj(i -> flash("L" + i, 5).group("g"))
                            .toList());

            assertThat(of(project).durationSeconds()).isCloseTo(0.75, ROUNDING);
        }

        @Test
        void isTheStepsThatAllBoardsNeed() {
            // Nine loads on two boards: one has five, four steps of 0.25 s.
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"), aBoard("B2"))
                    .loads(IntStream.range(0, 9)
                            .mapToObj(i -> flash("L" + i, 5))
                            .toList());

            assertThat(of(project).durationSeconds()).isCloseTo(1, ROUNDING);
        }
    }

    @Nested
    class Boards {
        private int fewest(ProjectBuilder project) {
            return FewestBoards.of(project.build());
        }

        private ProjectBuilder fourOutputs() {
            ProjectBuilder project = aProject().boardTypes(aBoardType("four").outputs(4));
            for (int i = 1; i <= 4; i++) {
                project.boards(aBoard("B" + i).type("four"));
            }
            return project;
        }

        @Test
        void areNotSharedByWhatDropsAndWhatHolds() {
            assertThat(fewest(fourOutputs()
                            .groups(aGroup("g").drops())
                            .loads(aLoad("a").group("g"), aLoad("b"))))
                    .isEqualTo(2);
        }

        @Test
        void takeOneLargeGroupEach() {
            // 3 + 3 + 3 of 12 outputs, but no two on four.
            ProjectBuilder project = fourOutputs().groups(aGroup("x"), aGroup("y"), aGroup("z"));
            for (String group : new String[] {"x", "y", "z"}) {
                IntStream.range(0, 3)
                        .forEach(i -> project.loads(aLoad(group + i).group(group)));
            }

            assertThat(fewest(project)).isEqualTo(3);
        }

        @Test
        void areForAGroupAloneThatIsLargerThanAny() {
            // Five on two boards, where nothing else may sit, and one more load that drops.
            ProjectBuilder project = fourOutputs().groups(aGroup("g"), aGroup("h"));
            IntStream.range(0, 5).forEach(i -> project.loads(aLoad("L" + i).group("g")));

            assertThat(fewest(project.loads(aLoad("one").group("h")))).isEqualTo(3);
        }

        @Test
        void areCountedFromThoseWithTheMostOutputs() {
            // 8 + 4: nine loads need two.
            ProjectBuilder project = aProject()
                    .boardTypes(
                            aBoardType("four").outputs(4), aBoardType("more").outputs(8))
                    .boards(aBoard("B1").type("four"), aBoard("B2").type("more"))
                    .loads(IntStream.range(0, 9).mapToObj(i -> aLoad("L" + i)).toList());

            assertThat(fewest(project)).isEqualTo(2);
        }
    }

    @Nested
    class Deviations {
        private double least(LoadBuilder... loads) {
            return new LeastDeviation(
                            aProject().panels(aPanel("P1")).loads(loads).build())
                    .supplyAmps();
        }

        private LeastDeviation onLegs(PanelBuilder[] panels, LoadBuilder... loads) {
            return new LeastDeviation(aProject().panels(panels).loads(loads).build());
        }

        private static PanelBuilder[] both(Phase... second) {
            return new PanelBuilder[] {
                aPanel("P1").phaseRotation(Phase.A, Phase.B), aPanel("P2").phaseRotation(second)
            };
        }

        @Test
        void areWhatWholeUnitsLeaveOver() {
            // Four times 1 A on three phases: a mean of 4/3, one phase has 2.
            assertThat(least(
                            aLoad("a").runningAmps(1),
                            aLoad("b").runningAmps(1),
                            aLoad("c").runningAmps(1),
                            aLoad("d").runningAmps(1)))
                    .isCloseTo(2 / 3.0, ROUNDING);
        }

        @Test
        void areWhatALargeLoadHasAboveTheMean() {
            // 9 A against a mean of (9 + 3)/3.
            assertThat(least(aLoad("a").runningAmps(9), aLoad("b").runningAmps(3)))
                    .isCloseTo(5, ROUNDING);
        }

        @Test
        void ofAPanelOnTwoLegsAreThoseOfItsTwo() {
            // 10 A and 10 A, one a leg: the panel is even; at the supply C carries nothing, 20/3 A below the mean.
            LeastDeviation least = onLegs(
                    new PanelBuilder[] {aPanel("P1").phaseRotation(Phase.A, Phase.B)},
                    aLoad("a").runningAmps(10),
                    aLoad("b").runningAmps(10));

            assertThat(least.panelsAmps()).isZero();
            assertThat(least.supplyAmps()).isCloseTo(20 / 3.0, ROUNDING);
        }

        @Test
        void ofPanelsOnTwoLegsAreHalfTheUnitThatIsLeftOver() {
            // Three times 2 A: one of the panels has an odd number of them, one leg 2 A more, each 1 A off their mean.
            LoadBuilder[] loads = {
                aLoad("a").runningAmps(2), aLoad("b").runningAmps(2), aLoad("c").runningAmps(2)
            };

            assertThat(onLegs(both(Phase.B, Phase.C), loads).panelsAmps()).isCloseTo(1, ROUNDING);
            // With a panel of three phases beside it: one unit on each there, none here.
            assertThat(onLegs(both(Phase.A, Phase.B, Phase.C), loads).panelsAmps())
                    .isZero();
        }

        @Test
        void ofALargeLoadAreThoseOfThePanelThatSuitsItBest() {
            // 9 A and 1 A: with both on two legs 9 − 10/2 = 4; alone on the only phase of a panel nothing.
            LoadBuilder[] loads = {aLoad("a").runningAmps(9), aLoad("b").runningAmps(1)};

            assertThat(onLegs(both(Phase.C, Phase.A), loads).panelsAmps()).isCloseTo(4, ROUNDING);
            assertThat(onLegs(both(Phase.C), loads).panelsAmps()).isZero();
        }

        @Test
        void areNothingWherePhasesCanBeEqual() {
            assertThat(least(aLoad("a").threePole().runningAmps(7))).isZero();
        }
    }

    @Nested
    class TheObjective {
        @Test
        void takesPeakAndDurationTogether() {
            // Two flashes of 10: together 20 at 0 s, or apart 10 + 5 a second: 15, though the parts alone are 10 and 0.
            ProjectBuilder project = onePhase(9, flash("a", 10), flash("b", 10))
                    .objective(ObjectiveWeights.builder()
                            .peakInrush(1)
                            .supplyImbalance(0)
                            .panelImbalance(0)
                            .duration(5)
                            .boards(0)
                            .build());

            assertThat(of(project).objective()).isCloseTo(15, ROUNDING);
            assertThat(of(project).peakInrushAmps()).isCloseTo(10, ROUNDING);
            assertThat(of(project).durationSeconds()).isZero();
        }

        @Test
        void takesTheOtherWayWhereThatIsCheaper() {
            ProjectBuilder project = onePhase(9, flash("a", 10), flash("b", 10))
                    .objective(ObjectiveWeights.builder()
                            .peakInrush(1)
                            .supplyImbalance(0)
                            .panelImbalance(0)
                            .duration(50)
                            .boards(0)
                            .build());

            assertThat(of(project).objective()).isCloseTo(20, ROUNDING);
        }

        @Test
        void addsWhatBoardsAndDeviationsCost() {
            // One load of 12 A on phase A: mean 4, deviation 8 at the supply and in the panel; one board; peak 30.
            ProjectBuilder project = aProject()
                    .boards(aBoard("B1"))
                    .loads(flash("a", 30).runningAmps(12))
                    .objective(ObjectiveWeights.builder()
                            .peakInrush(2)
                            .supplyImbalance(3)
                            .panelImbalance(5)
                            .duration(7)
                            .boards(11)
                            .build());

            assertThat(of(project).objective()).isCloseTo(2 * 30 + 3 * 8 + 5 * 8 + 11, ROUNDING);
        }

        @Test
        void isFiniteThoughNoPlanExists() {
            ProjectBuilder project = onePhase(
                            9,
                            flash("dsp", 5).processing().settleSeconds(8),
                            flash("amp", 7).amplifier())
                    .maxDurationSeconds(3);

            assertThat(of(project).objective()).isBetween(7.0, 20.0);
        }
    }
}
