package evenrise.solver.engine.nearby;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Plan;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.AssertedSearch;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The search around a plan as built, under the assertions that the search for a new plan is held to. */
class NearbySteeringTest {
    private static final long MOVES = 1_500;

    /** The solver compares after every move and every undo, from the first annealing to the last change undone. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void keepsTheScoreThatANaiveEvaluatorGives(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);

        keepsItsSumsTrue(planted.project(), planted.plan(), seed, MOVES);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void keepsItOfPlants(long seed) {
        Project project = AssertedSearch.plant(300 + seed, 30);

        keepsItsSumsTrue(project, planned(project, seed), seed, MOVES);
    }

    @Test
    void keepsItInLargerProjects() {
        long seed = 1;
        Project project = Sample.venue(seed, new VenueSize(3, 60, PhaseSystem.THREE_PHASE))
                .project();

        assertThat(new CompiledProject(project).isSmall()).isFalse();
        keepsItsSumsTrue(project, planned(project, seed), seed, MOVES / 3);
    }

    private static Plan planned(Project project, long seed) {
        return new Planner(
                        new PlanningRequest(project, Optional.empty(), new Budget.Moves(100), seed, 1), progress -> {})
                .plan()
                .plan();
    }

    private static void keepsItsSumsTrue(Project project, Plan plan, long seed, long moves) {
        CompiledProject compiled = new CompiledProject(project);
        PlanSums sums = new PlanMapper(compiled).toSums(plan);
        PlanSnapshot built = sums.snapshot();
        NearbyArchive archive = new NearbyArchive(compiled);
        archive.offer(sums, new BuiltPositions(PlanSums.of(compiled, built), Optional.empty()));

        NearbySteering steering = new NearbySteering(compiled, built, archive, Optional.empty(), seed);
        AssertedSearch.run(steering, compiled, built, moves, seed);

        assertThat(archive.plans()).isNotEmpty();
        for (PlanSnapshot each : archive.snapshots()) {
            PlanSums anew = PlanSums.of(compiled, each);
            BuiltPositions positions = new BuiltPositions(PlanSums.of(compiled, built), Optional.empty());
            positions.refreshAll(anew);
            assertThat(archive.plans())
                    .anyMatch(plans -> plans.moves() == positions.moves() && plans.hardCharge() == anew.hardCharge());
        }
    }
}
