package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.app.Effort;
import evenrise.solver.app.FewMoves;
import evenrise.solver.app.PlanRequest;
import evenrise.solver.app.Source;
import evenrise.solver.app.StandIns;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A plan made near an earlier one, held against a look at every plan of tiny projects whose loads have changed. */
class FewMovesTest {
    /** Projects; a long run tries more by -Devenrise.changed=300. */
    private static final int CHANGED = Integer.getInteger("evenrise.changed", 4);

    private static final int FIRST_SEED = 5;
    private static final double PRICELESS = 1e6;

    private static Plan planned(Project project, Plan earlier, FewMoves few) {
        return StandIns.withoutProofs()
                .plan(PlanRequest.of(Source.of(project))
                        .withFrom(Source.of(earlier))
                        .withEffort(Effort.ofMoves(6_000))
                        .withFewMoves(few))
                .plan();
    }

    private static int moves(Plan plan) {
        Metrics metrics = plan.metrics().orElseThrow();
        return metrics.movedBreakers().orElseThrow() + metrics.movedLeads().orElseThrow();
    }

    private static Optional<Plan> soundPlan(Project project) {
        return EveryNearbyPlan.first(
                project,
                plan -> Referee.judge(project, PlanFinisher.timed(project, plan))
                        .violations()
                        .isEmpty());
    }

    /** The share of projects in which one move more than the least is needed may be a hundredth; of few, none may. */
    @Test
    void takesAtMostOneMoveMoreThanTheLeast() {
        int tried = 0;
        int worse = 0;
        for (long seed = FIRST_SEED; tried < CHANGED; seed++) {
            Project drawn = Reworked.tiny(seed);
            Optional<Plan> sound = soundPlan(drawn);
            if (sound.isEmpty()) {
                continue;
            }
            Project project = Reworked.raised(drawn, seed, 3, 0.35);
            TreeMap<Integer, Double> exact = EveryNearbyPlan.front(project, sound.get());
            if (exact.isEmpty()) {
                continue;
            }
            tried++;
            int least = exact.firstKey();

            Plan fewest =
                    planned(project, sound.get(), new FewMoves(OptionalInt.empty(), OptionalDouble.of(PRICELESS)));
            Plan within = planned(project, sound.get(), FewMoves.most(least));

            assertThat(fewest.violations()).as("seed %d", seed).isEmpty();
            assertThat(moves(within)).as("seed %d", seed).isLessThanOrEqualTo(least);
            assertThat(moves(fewest)).as("seed %d", seed).isGreaterThanOrEqualTo(least);
            worse += moves(fewest) > least + 1 ? 1 : 0;
            if (within.violations().isEmpty()) {
                assertThat(within.metrics().orElseThrow().objective())
                        .as("no plan of so few moves is better, seed %d", seed)
                        .isGreaterThanOrEqualTo(exact.get(least) - 0.002);
            }
        }

        assertThat(worse).isLessThanOrEqualTo(CHANGED / 100);
    }

    /** The best of all plans is that of the front's end, where moves cost nothing and none is too many. */
    @Test
    void movesForNothingWhereMovesCostNothing() {
        Project drawn = Reworked.tiny(FIRST_SEED);
        Plan earlier = soundPlan(drawn).orElseThrow();
        Project project = Reworked.raised(drawn, FIRST_SEED, 3, 0.35);
        double best = EveryNearbyPlan.front(project, earlier).lastEntry().getValue();

        Plan plan = planned(project, earlier, new FewMoves(OptionalInt.of(100), OptionalDouble.of(0)));

        assertThat(plan.metrics().orElseThrow().objective()).isCloseTo(best, within(0.002));
    }

    @Test
    void aPlanThatIsGoodAsItIsStaysAsItIs() {
        Project project = Reworked.tiny(FIRST_SEED);
        Plan earlier = soundPlan(project).orElseThrow();

        Plan plan = planned(project, earlier, FewMoves.most(0));

        assertThat(moves(plan)).isZero();
        assertThat(plan.violations()).isEmpty();
    }
}
