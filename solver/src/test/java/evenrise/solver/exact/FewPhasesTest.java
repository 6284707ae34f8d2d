package evenrise.solver.exact;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Bounds;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Panels on two legs of three phases, or on one: what is proven of them, against a look at every plan. */
class FewPhasesTest {
    private static final double ROUNDING = 1e-6;
    private static final Budget ENOUGH = new Budget.Moves(200_000);

    /** What a second panel may have beside a first one on A and B. */
    private static final List<List<Phase>> SECOND = List.of(
            List.of(Phase.A, Phase.B, Phase.C),
            List.of(Phase.B, Phase.C),
            List.of(Phase.C),
            List.of(Phase.C, Phase.A),
            List.of(Phase.A, Phase.B));

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    /** Four loads in two panels of three slots each, switched by one board of four outputs. */
    private static Project project(long seed) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L + 11);
        ProjectBuilder project = aProject()
                .name("few-phases-" + seed)
                .panels(
                        aPanel("P1").slots(3).sequential().phaseRotation(Phase.A, Phase.B),
                        aPanel("P2").slots(3).sequential().phaseRotation(SECOND.get((int) (seed % SECOND.size()))))
                .boardTypes(aBoardType("T").outputs(4).startDelaySeconds(0).stepSeconds(0.25, 0.5))
                .boards(aBoard("B1").type("T").in("P1").reaches("P1", "P2"))
                .objective(ObjectiveWeights.builder()
                        .peakInrush(random.nextInt(3) * 0.5)
                        .supplyImbalance(1)
                        .panelImbalance(1 + random.nextInt(3))
                        .duration(0.1)
                        .boards(0)
                        .build());
        boolean areAlike = random.nextBoolean();
        for (int i = 1; i <= 3; i++) {
            double running = areAlike ? 4 : (10 + random.nextInt(100)) / 10.0;
            project.loads(aLoad("L" + i)
                    .role(Role.AMPLIFIER)
                    .poles(!areAlike && i == 3 && seed % 4 == 1 ? 2 : 1)
                    .runningAmps(running)
                    .idleAmps(running / 2)
                    .inrushPeakAmps(running + random.nextInt(60))
                    .inrushHalfMillis(20 + random.nextInt(400)));
        }
        if (random.nextBoolean()) {
            project.loads(aLoad("L4").unswitched().runningAmps(areAlike ? 8 : (10 + random.nextInt(50)) / 10.0));
        }
        return project.build();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noBoundIsAboveTheBestOfAllPlans(long seed) {
        Project project = project(seed);
        EveryPlan.Least least = EveryPlan.least(project);

        Bounds bounds = ProvenBounds.of(project);
        double proven = new PhaseProver().peakAndDeviationsAmps(project, bounds.peakInrushAmps(), ENOUGH, 1, 1);

        assertThat(least.objective()).isFinite();
        assertThat(bounds.supplyDeviationAmps()).isLessThanOrEqualTo(least.supplyDeviation() + ROUNDING);
        assertThat(bounds.panelDeviationsAmps()).isLessThanOrEqualTo(least.panelDeviations() + ROUNDING);
        assertThat(bounds.objective()).isLessThanOrEqualTo(least.objective() + ROUNDING);
        assertThat(ProvenBounds.objective(project, bounds, proven)).isLessThanOrEqualTo(least.objective() + ROUNDING);
    }

    @Test
    void theBoundsAreReachedWhereUnitsOrALargeLoadDecide() {
        long reached = seeds().filter(seed -> {
                    Bounds bounds = ProvenBounds.of(project(seed));
                    return bounds.panelDeviationsAmps() > 0
                            && EveryPlan.least(project(seed)).panelDeviations()
                                    < bounds.panelDeviationsAmps() + ROUNDING;
                })
                .count();

        assertThat(reached).isPositive();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {0, 1, 2, 3, 4, 6, 8})
    void theExactModelFindsTheBestOfAllPlans(long seed) {
        Project project = project(seed);
        double least = EveryPlan.leastObjective(project);

        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(50_000), 1, 1);
        PlanningOutcome outcome = new Planner(request, progress -> {}, new ExactProver(2, note -> {})).plan();

        assertThat(outcome.provenObjective()).isBetween(least - 0.001, least + ROUNDING);
        assertThat(Referee.judge(project, PlanFinisher.timed(project, outcome.plan()))
                        .metrics()
                        .objective())
                .isBetween(least - ROUNDING, least + 0.001);
    }
}
