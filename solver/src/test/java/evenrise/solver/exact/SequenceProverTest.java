package evenrise.solver.exact;

import static evenrise.model.Fixtures.NOBODY;
import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import evenrise.model.ARandomProject;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SequenceProverTest {
    private static final Budget ENOUGH = new Budget.Moves(500_000);
    private static final Budget LITTLE = new Budget.Moves(25_000);
    private static final double ROUNDING = 1e-6;

    private static double amps(Project project) {
        return new SequenceProver().amps(project, Double.POSITIVE_INFINITY, ENOUGH, 1);
    }

    private static ExactKnown known(Project project, double mostAmps, Budget budget) {
        double peak = ProvenBounds.of(project).peakInrushAmps();
        PhaseProver phases = new PhaseProver();
        peak = Math.max(peak, phases.peakAmps(project, peak, budget, 1, 1));
        double currents = phases.peakAndDeviationsAmps(project, peak, budget, 1, 1);
        ExactKnown known = new ExactKnown(peak, currents, 0);
        double times = new SequenceProver().amps(project, known.mostSeconds(project, mostAmps), budget, 1);
        return new ExactKnown(peak, currents, times);
    }

    private static double ofTimes(Project project, Metrics metrics) {
        return project.objective().duration() * metrics.durationSeconds()
                + project.objective().boards() * metrics.boardsUsed();
    }

    /** A board of so many outputs, with steps of a second or two, a processor that settles for four, and three amplifiers. */
    private static Project threeAfterSettling(int outputs) {
        return aProject()
                .panels(aPanel("P"))
                .boardTypes(
                        aBoardType("only").outputs(outputs).startDelaySeconds(0).stepSeconds(1, 2))
                .boards(aBoard("B").type("only"))
                .loads(
                        aLoad("processor").processing().settleSeconds(4),
                        aLoad("one").amplifier(),
                        aLoad("two").amplifier(),
                        aLoad("three").amplifier())
                .objective(weights(0.5, 3))
                .build();
    }

    /**
     * A processor settles for four seconds, then three amplifiers follow. On one board with steps of a second or two the
     * amplifiers come on at four, five and six at best: step one, outputs five to seven.
     */
    @Test
    void aBoardThatMustWaitForSettlingPassesOutputsUnused() {
        assertThat(amps(threeAfterSettling(8))).isCloseTo(0.5 * 6 + 3, within(ROUNDING));
    }

    /** The same with six outputs: of steps of a second only two are left after settling, so steps take two seconds. */
    @Test
    void aStepIsTheSameForAllOfABoardsOutputs() {
        assertThat(amps(threeAfterSettling(6))).isCloseTo(0.5 * 8 + 3, within(ROUNDING));
    }

    /** What drops may not share the board of the processor, which holds: a second board costs three, and saves no time. */
    @Test
    void whatDropsNeedsABoardOfItsOwn() {
        Project project = aProject()
                .panels(aPanel("P"))
                .boardTypes(
                        aBoardType("eight").outputs(8).startDelaySeconds(0, 4).stepSeconds(1))
                .boards(
                        aBoard("B1").type("eight").in("P"),
                        aBoard("B2").type("eight").in("P"))
                .groups(aGroup("sound").drops())
                .loads(
                        aLoad("processor").processing().settleSeconds(4),
                        aLoad("one").amplifier().group("sound"),
                        aLoad("two").amplifier().group("sound"))
                .objective(weights(0.5, 3))
                .build();

        assertThat(amps(project)).isCloseTo(0.5 * 5 + 6, within(ROUNDING));
    }

    @Test
    void noModelIsMadeOfATimeInWhichAmplifiersCannotComeOn() {
        Project project = aProject()
                .panels(aPanel("P"))
                .boardTypes(aBoardType("eight"))
                .boards(aBoard("B").type("eight"))
                .loads(
                        aLoad("processor").processing().settleSeconds(4),
                        aLoad("amp").amplifier())
                .build();

        assertThatThrownBy(() -> new ExactModel(project, true, 3)).isInstanceOf(NoTime.class);
        assertThat(new ExactModel(project, true, 8).model()).isNotNull();
    }

    private static ObjectiveWeights weights(double duration, double boards) {
        return ObjectiveWeights.builder().duration(duration).boards(boards).build();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {2, 3, 5})
    void isNotAboveAnyPlanThereIsOfATinyProject(long seed) {
        Project project = TinyProject.of(seed);
        EveryPlan.Least least = EveryPlan.least(project);

        ExactKnown known = known(project, least.objective(), ENOUGH);

        assertThat(amps(project)).isLessThanOrEqualTo(least.durationAndBoards() + ROUNDING);
        assertThat(known.objectiveAmps()).isPositive().isLessThanOrEqualTo(least.objective() + ROUNDING);
    }

    /** A planted plan keeps every rule, so a sum above its objective would be no bound. */
    @Test
    void isNeverAboveAPlanThatKeepsEveryRule() {
        int proven = 0;
        for (long seed = 0; seed < 60; seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project project = planted.project();
            if (PhaseProver.suits(project) && ExactProver.isSmall(project)) {
                Plan plan = PlanFinisher.finish(project, planted.plan(), NOBODY, ProvenBounds.of(project));
                Metrics metrics = Referee.judge(project, plan).metrics();

                ExactKnown known = known(project, metrics.objective(), LITTLE);

                assertThat(known.durationAndBoardsAmps())
                        .as("seed %d", seed)
                        .isLessThanOrEqualTo(ofTimes(project, metrics) + ROUNDING);
                assertThat(known.objectiveAmps())
                        .as("objective, seed %d", seed)
                        .isLessThanOrEqualTo(metrics.objective() + ROUNDING);
                assertThat(known.mostSeconds(project, metrics.objective()))
                        .as("longest, seed %d", seed)
                        .isGreaterThanOrEqualTo(metrics.durationSeconds());
                proven += known.durationAndBoardsAmps() > 0 ? 1 : 0;
            }
        }
        assertThat(proven).as("projects of which something is proven").isGreaterThan(10);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 6, 7})
    void whatIsKnownLeavesTheBestPlanInTheExactModel(long seed) {
        Project project = ExactModelProject.of(seed);
        Exact.Optimum exact = ExactOptimumTest.optimum(seed);
        double objective = exact.plan().metrics().orElseThrow().objective();
        ExactKnown known = known(project, objective, LITTLE);
        ExactModel model = new ExactModel(project, true, known.mostSeconds(project, objective));
        model.minimize(known);
        model.within(objective, objective);
        model.fix(exact.plan());
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1);

        CpSolverStatus status = solver.solve(model.model());

        assertThat(status).isEqualTo(CpSolverStatus.OPTIMAL);
        assertThat(known.objectiveAmps()).isLessThanOrEqualTo(objective + ROUNDING);
    }
}
