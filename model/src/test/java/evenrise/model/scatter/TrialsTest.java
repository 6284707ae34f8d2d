package evenrise.model.scatter;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.Network;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.Scatter;
import evenrise.model.project.Spread;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrialsTest {
    private static final int TRIALS = 40_000;
    private static final Scatter ANGLE_ALONE = Scatter.builder()
            .closing(Spread.UNIFORM)
            .leastInrushPercent(100)
            .angleUpToHalfMillis(100)
            .meanVoltagePercent(100)
            .voltageDeviationPercent(0)
            .build();
    private static final Scatter CLOSING_ALONE = Scatter.builder()
            .closing(Spread.UNIFORM)
            .leastInrushPercent(100)
            .angleUpToHalfMillis(0)
            .meanVoltagePercent(100)
            .voltageDeviationPercent(0)
            .build();

    /** Two loads on one phase, both nominally at once where their boards say so. */
    private static Layout twoLoads(double toleranceSeconds, double peakAmps, double halfMillis) {
        Project project = aProject()
                .supply(aSupply().voltageRange(100, 100))
                .timingToleranceSeconds(toleranceSeconds)
                .boards(aBoard("B1"), aBoard("B2"))
                .loads(
                        aLoad("L1")
                                .runningAmps(0)
                                .idleAmps(0)
                                .inrushPeakAmps(peakAmps)
                                .inrushHalfMillis(halfMillis),
                        aLoad("L2")
                                .runningAmps(0)
                                .idleAmps(0)
                                .inrushPeakAmps(peakAmps)
                                .inrushHalfMillis(halfMillis))
                .build();
        Plan plan = aPlan().assignments(
                        anAssignment("L1").at("P1", 1).on("B1", 1),
                        anAssignment("L2").at("P1", 2).on("B2", 1))
                .build();
        return Layout.of(project, plan);
    }

    private static Layout oneLoad(double peakAmps) {
        Project project = aProject()
                .boards(aBoard("B1"))
                .loads(aLoad("L1").runningAmps(0).idleAmps(0).inrushPeakAmps(peakAmps))
                .build();
        return Layout.of(
                project,
                aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1)).build());
    }

    private static NodeScatter supply(Layout layout, Scatter scatter, int trials, long seed) {
        return Trials.of(layout, scatter, Optional.empty(), Optional.empty(), trials, seed, 2)
                .get(0);
    }

    @Nested
    class AgainstClosedForms {
        /** |sin θ| of a uniform angle: its square has the arcsine law, Beta(1/2, 1/2). */
        @Test
        void angleScattersByTheArcsineLaw() {
            BetaDistribution squares = new BetaDistribution(0.5, 0.5);

            for (Percentile each : supply(oneLoad(100), ANGLE_ALONE, TRIALS, 1).peakAmps()) {
                double expected = 100 * Math.sqrt(squares.inverseCumulativeProbability(each.percent() / 100));
                assertThat(each.value()).isCloseTo(expected, within(0.01 * expected));
            }
        }

        /** The gap of two uniform closing times has the triangular law F(d) = 1 − (1 − d/2g)²; the later one is the peak. */
        @Test
        void closingTimesScatterByTheTriangularLaw() {
            double tolerance = 0.05;
            double half = 0.02;

            for (Percentile each : supply(twoLoads(tolerance, 100, 1000 * half), CLOSING_ALONE, TRIALS, 1)
                    .peakAmps()) {
                // The peak exceeds x when the gap is short, so percentile p is the gap's (1 − p).
                double gap = 2 * tolerance * (1 - Math.sqrt(each.percent() / 100));
                double expected = 100 + 100 * Math.pow(2, -gap / half);
                assertThat(each.value()).isCloseTo(expected, within(0.01 * expected));
            }
        }

        @Test
        void voltageScattersByTheCutNormalLaw() {
            NormalDistribution normal = new NormalDistribution();
            double tail = normal.cumulativeProbability(-Scatter.VOLTAGE_CUT);
            Scatter voltageAlone = Scatter.builder()
                    .closing(Spread.UNIFORM)
                    .leastInrushPercent(100)
                    .angleUpToHalfMillis(0)
                    .meanVoltagePercent(100)
                    .voltageDeviationPercent(3)
                    .build();

            for (Percentile each : supply(oneLoad(100), voltageAlone, TRIALS, 1).peakAmps()) {
                double part = tail + each.percent() / 100 * (1 - 2 * tail);
                double expected = 100 * (1 + 0.03 * normal.inverseCumulativeProbability(part));
                assertThat(each.value()).isCloseTo(expected, within(0.002 * expected));
            }
        }
    }

    @Nested
    class Confidence {
        /** Of 400 intervals of 95 %, 380 are expected to hold the truth; 364 to 396 is nearly four deviations either side. */
        @Test
        void intervalsHoldTheTruthAsOftenAsTheySay() {
            double truth = 100 * Math.sqrt(new BetaDistribution(0.5, 0.5).inverseCumulativeProbability(0.5));
            Layout layout = oneLoad(100);
            int held = 0;
            for (int seed = 0; seed < 400; seed++) {
                Percentile median =
                        supply(layout, ANGLE_ALONE, 300, seed).peakAmps().get(0);
                if (median.least() <= truth && truth <= median.most()) {
                    held++;
                }
            }

            assertThat(held).isBetween(364, 396);
        }
    }

    @Nested
    class Determinism {
        @Test
        void dependsOnTheSeedAloneNotOnThreads() {
            Layout layout = twoLoads(0.05, 100, 20);

            assertThat(Trials.of(layout, Scatter.USUAL, Optional.empty(), Optional.empty(), 999, 5, 1))
                    .isEqualTo(Trials.of(layout, Scatter.USUAL, Optional.empty(), Optional.empty(), 999, 5, 3));
            assertThat(Trials.of(layout, Scatter.USUAL, Optional.empty(), Optional.empty(), 999, 5, 1))
                    .isNotEqualTo(Trials.of(layout, Scatter.USUAL, Optional.empty(), Optional.empty(), 999, 6, 1));
        }
    }

    @Nested
    class Dips {
        private final Network network = new Network(new Impedance(0.1, 0), Map.of("P1", new Impedance(0.05, 0)));

        /** A slow inrush of 100 A crest is 70.7 A rms: 0.1 Ω of 120 V makes a linear 5.89 %. */
        @Test
        void areTheRmsOfAHalfCycleOnTheImpedance() {
            Scatter none = Scatter.builder()
                    .closing(Spread.UNIFORM)
                    .leastInrushPercent(100)
                    .angleUpToHalfMillis(0)
                    .meanVoltagePercent(100)
                    .voltageDeviationPercent(0)
                    .build();
            List<NodeScatter> nodes = Trials.of(slow(), none, Optional.of(network), Optional.empty(), 10, 1, 1);

            assertThat(nodes.get(0).deepestPercent()).isCloseTo(5.882, within(0.01));
            // The feeder's line and neutral add twice 0.05 Ω
            assertThat(nodes.get(1).deepestPercent()).isCloseTo(11.70, within(0.02));
        }

        @Test
        void areLeftOutWithoutANetwork() {
            assertThat(supply(slow(), Scatter.USUAL, 10, 1).dipPercent()).isEmpty();
        }

        private Layout slow() {
            Project project = aProject()
                    .boards(aBoard("B1"))
                    .loads(aLoad("L1")
                            .runningAmps(0)
                            .idleAmps(0)
                            .inrushPeakAmps(100)
                            .inrushHalfMillis(2000))
                    .build();
            return Layout.of(
                    project,
                    aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1))
                            .build());
        }
    }

    @Nested
    class AgainstTheUpperBound {
        @ParameterizedTest
        @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
        void noTrialOfARandomProjectExceedsIt(long seed) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Layout layout = Layout.of(planted.project(), planted.plan());

            for (Scatter scatter : List.of(
                    Scatter.USUAL,
                    CLOSING_ALONE,
                    Scatter.builder()
                            .closing(Spread.NORMAL)
                            .leastInrushPercent(100)
                            .angleUpToHalfMillis(0)
                            .meanVoltagePercent(104)
                            .voltageDeviationPercent(3)
                            .build())) {
                for (NodeScatter node : Trials.of(layout, scatter, Optional.empty(), Optional.empty(), 200, seed, 1)) {
                    assertThat(node.greatestAmps()).as(node.node()).isLessThanOrEqualTo(node.rangeAmps() * (1 + 1e-9));
                }
            }
        }

        @Test
        void worstTrialComesNearIt() {
            NodeScatter node = supply(twoLoads(0.05, 100, 200), CLOSING_ALONE, TRIALS, 1);

            // Bound 200 A: both at once
            assertThat(node.rangeAmps()).isCloseTo(200, within(1e-9));
            assertThat(node.greatestAmps()).isBetween(199.0, 200.0);
        }

        @Test
        void withoutScatterEveryTrialIsTheBound() {
            Scatter none = Scatter.builder()
                    .closing(Spread.UNIFORM)
                    .leastInrushPercent(100)
                    .angleUpToHalfMillis(0)
                    .meanVoltagePercent(100)
                    .voltageDeviationPercent(0)
                    .build();
            NodeScatter node = supply(twoLoads(0, 100, 20), none, 10, 1);

            assertThat(node.greatestAmps()).isCloseTo(200, within(1e-9));
            assertThat(node.peakAmps().get(0).value()).isCloseTo(200, within(0.2));
        }
    }
}
