package evenrise.solver.exact;

import static evenrise.model.Fixtures.NOBODY;
import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.LoadBuilder;
import evenrise.model.SupplyBuilder;
import evenrise.model.plan.Bounds;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PhaseProverTest {
    private static final Budget ENOUGH = new Budget.Moves(500_000);

    /** Crest of a base of ten amperes. */
    private static final double BASE = Math.sqrt(2) * 10;

    private static double peakAmps(Project project) {
        return new PhaseProver().peakAmps(project, 0, ENOUGH, 1, 1);
    }

    private static double objectiveAmps(Project project, double leastPeakAmps) {
        Bounds bounds = ProvenBounds.of(project, leastPeakAmps, () -> false);
        double amps = new PhaseProver().peakAndDeviationsAmps(project, leastPeakAmps, ENOUGH, 1, 1);
        return ProvenBounds.objective(project, bounds, amps);
    }

    private static double peakAmps(SupplyBuilder supply, LoadBuilder... loads) {
        return peakAmps(aProject()
                .supply(supply)
                .panels(aPanel("P"))
                .boardTypes(aBoardType("eight"))
                .boards(aBoard("B").type("eight"))
                .loads(loads)
                .build());
    }

    private static LoadBuilder steady(String id) {
        return aLoad(id).runningAmps(10).idleAmps(10).inrushPeakAmps(BASE);
    }

    @Nested
    class OnThreePhases {
        @Test
        void aLoadThatMayHaveAPhaseToItselfFindsNothingThere() {
            double peak = peakAmps(
                    aSupply(),
                    steady("lamp").unswitched(),
                    aLoad("amp").amplifier().inrushPeakAmps(90));

            assertThat(peak).isCloseTo(90, within(1e-3));
        }

        @Test
        void aLoadOnAllPhasesFindsWhatAlwaysDraws() {
            double peak = peakAmps(
                    aSupply(),
                    steady("lamp").unswitched(),
                    aLoad("amp").amplifier().threePole().inrushPeakAmps(90));

            assertThat(peak).isCloseTo(90 + BASE, within(1e-3));
        }

        /** Of four, two must share a phase; the last of the two finds the other's base. */
        @Test
        void twoOfFourEqualLoadsShareAPhase() {
            LoadBuilder[] amps = new LoadBuilder[4];
            for (int i = 0; i < amps.length; i++) {
                amps[i] = aLoad("amp" + i)
                        .amplifier()
                        .runningAmps(10)
                        .idleAmps(10)
                        .inrushPeakAmps(90);
            }

            assertThat(peakAmps(aSupply(), amps)).isCloseTo(90 + BASE, within(1e-3));
        }

        /**
         * The amplifier on two phases leaves one to the processor: there the auxiliary load, which needs all three, finds
         * the processor's base, and the amplifier finds the auxiliary load's on both of its own.
         */
        @Test
        void aLaterRoleFindsTheBasesOfEarlierOnes() {
            double peak = peakAmps(
                    aSupply(),
                    steady("processor").processing(),
                    steady("auxiliary").auxiliary().threePole().inrushPeakAmps(60),
                    aLoad("amp").amplifier().twoPole().inrushPeakAmps(70));

            assertThat(peak).isCloseTo(70 + BASE, within(1e-3));
        }
    }

    @Nested
    class OnSplitPhase {
        @Test
        void theLastOfThreeLoadsSharesALine() {
            double peak = peakAmps(
                    aSupply().splitPhase(),
                    steady("large").inrushPeakAmps(100),
                    steady("middle").inrushPeakAmps(80),
                    steady("small").inrushPeakAmps(50));

            assertThat(peak).isCloseTo(100, within(1e-3));
        }

        @Test
        void threeEqualLoadsCannotKeepApart() {
            double peak = peakAmps(
                    aSupply().splitPhase(),
                    steady("one").inrushPeakAmps(80),
                    steady("two").inrushPeakAmps(80),
                    steady("three").inrushPeakAmps(80));

            assertThat(peak).isCloseTo(80 + BASE, within(1e-3));
        }
    }

    /**
     * Two loads of one pole on three phases, five and ten amperes: the mean is five, so the first deviates by nothing, the
     * free phase and the other by five. Their peaks are alone on their phases.
     */
    @Test
    void addsWhatBalanceCosts() {
        Project project = aProject()
                .panels(aPanel("P"))
                .boardTypes(aBoardType("eight"))
                .boards(aBoard("B").type("eight"))
                .loads(
                        aLoad("one").runningAmps(5).inrushPeakAmps(50),
                        aLoad("other").runningAmps(10).inrushPeakAmps(60))
                .build();
        double amps = new PhaseProver().peakAndDeviationsAmps(project, 0, ENOUGH, 1, 1);

        ObjectiveWeights weights = project.objective();
        assertThat(amps)
                .isCloseTo(
                        weights.peakInrush() * 60 + weights.supplyImbalance() * 5 + weights.panelImbalance() * 5,
                        within(1e-3));
    }

    /** A planted plan keeps every rule, so a bound above its peak would be no bound. */
    @Test
    void isNeverAboveThePeakOfAPlanThatKeepsEveryRule() {
        int better = 0;
        for (long seed = 0; seed < 300; seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            if (PhaseProver.suits(planted.project())) {
                Verdict verdict = Referee.judge(
                        planted.project(),
                        PlanFinisher.finish(
                                planted.project(), planted.plan(), NOBODY, ProvenBounds.of(planted.project())));

                double bound = peakAmps(planted.project());

                assertThat(verdict.violations()).as("seed %d", seed).isEmpty();
                assertThat(bound)
                        .as("seed %d", seed)
                        .isLessThanOrEqualTo(verdict.metrics().peakInrushAmps() + 1e-9);
                assertThat(objectiveAmps(planted.project(), bound))
                        .as("objective, seed %d", seed)
                        .isLessThanOrEqualTo(verdict.metrics().objective() + 1e-9);
                better += bound > ProvenBounds.of(planted.project()).peakInrushAmps() + 1e-3 ? 1 : 0;
            }
        }
        assertThat(better)
                .as("projects of which it proves more than the other arguments")
                .isGreaterThan(10);
    }

    @Test
    void leavesLargeProjectsAlone() {
        LoadBuilder[] loads = new LoadBuilder[PhaseProver.MOST_LOADS + 1];
        for (int i = 0; i < loads.length; i++) {
            loads[i] = aLoad("load" + i);
        }

        assertThat(PhaseProver.suits(aProject().loads(loads).build())).isFalse();
    }

    @Test
    void provesNothingOnceItIsStopped() {
        PhaseProver prover = new PhaseProver();
        prover.stop();

        double peak = prover.peakAmps(ARandomProject.planted(1).project(), 0, ENOUGH, 1, 1);

        assertThat(peak).isZero();
    }
}
