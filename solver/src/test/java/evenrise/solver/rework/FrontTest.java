package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import java.util.ArrayList;
import java.util.IntSummaryStatistics;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FrontTest {
    @Nested
    class OfATinyPlant {
        /** Every plan of the plant is looked at: no front is better than that. */
        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {5, 6, 7, 8})
        void isWhatALookAtEveryPlanGives(long seed) {
            Project drawn = Reworked.tiny(seed);
            Plan built = someFeasible(drawn);
            Project project = Reworked.raised(drawn, seed, 3, 0.35);

            NightPrices prices = NightPrices.of(project, built);
            IntSummaryStatistics moves = new IntSummaryStatistics();
            IntSummaryStatistics breakers = new IntSummaryStatistics();
            TreeMap<Double, Double> exact = EveryNearbyPlan.front(project, built, changes -> {
                moves.accept(changes.moves());
                breakers.accept(changes.breakers());
                return prices.cost(changes).minutes();
            });
            Front found = Reworked.front(project, built, 60_000);

            assertThat(exact).isNotEmpty();
            assertThat(found.points().stream().map(FrontPoint::minutes)).containsExactlyElementsOf(exact.keySet());
            found.points()
                    .forEach(point ->
                            assertThat(point.objective()).isCloseTo(exact.get(point.minutes()), within(0.002)));
            assertThat(found.fewestMoves().moves()).isEqualTo(moves.getMin());
            assertThat(found.leastBreakers()).isLessThanOrEqualTo(breakers.getMin());
        }

        private static Plan someFeasible(Project project) {
            List<Plan> feasible = new ArrayList<>();
            EveryNearbyPlan.each(project, plan -> {
                if (feasible.isEmpty()
                        && Referee.judge(project, PlanFinisher.timed(project, plan))
                                .violations()
                                .isEmpty()) {
                    feasible.add(plan);
                }
            });
            return feasible.get(0);
        }
    }

    @Nested
    class OfAnyPlant {
        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {1, 2, 3, 4, 5, 6})
        void countsMovesAndJudgesAsTheRefereeDoes(long seed) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project project = Reworked.raised(planted.project(), seed, 4, 0.5);
            NearbySearch search = Reworked.search(project, planted.plan(), seed);
            search.search(new Budget.Moves(4_000));

            assertThat(search.plans()).isNotEmpty();
            for (NearbyPlan each : search.plans()) {
                Verdict verdict = Referee.judge(project, PlanFinisher.timed(project, each.plan()));
                assertThat(Changes.between(new ProjectIndex(project), planted.plan(), each.plan())
                                .moves())
                        .isEqualTo(each.moves());
                assertThat(each.hardCharge() == 0)
                        .isEqualTo(verdict.violations().isEmpty());
                assertThat(verdict.metrics().objective()).isCloseTo(each.objective(), within(0.002));
            }
        }

        @ParameterizedTest(name = "seed {0}")
        @ValueSource(longs = {1, 2, 3, 4, 5, 6})
        void fallsInWhatIsBrokenAndThenInTheObjective(long seed) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);
            Project project = Reworked.raised(planted.project(), seed, 4, 0.5);

            Front front = Reworked.front(project, planted.plan(), 4_000);

            for (int i = 1; i < front.points().size(); i++) {
                FrontPoint before = front.points().get(i - 1);
                FrontPoint after = front.points().get(i);
                assertThat(after.minutes()).isGreaterThan(before.minutes());
                assertThat(after.violations()).isEqualTo(before.violations());
                assertThat(after.objective()).isLessThan(before.objective());
            }
            assertThat(front.partial())
                    .allSatisfy(part -> assertThat(part.violations())
                            .isGreaterThan(front.cureOnly().violations()));
        }

        @Test
        void isTheSameForTheSameSeedAndMoves() {
            ARandomProject.Planted planted = ARandomProject.planted(7);

            Front once = Reworked.front(planted.project(), planted.plan(), 3_000);
            Front again = Reworked.front(planted.project(), planted.plan(), 3_000);

            assertThat(again).isEqualTo(once);
        }
    }

    @Nested
    class ThePointToTake {
        private final Front front = LongStream.rangeClosed(1, 20)
                .mapToObj(ARandomProject::planted)
                .map(planted -> Reworked.front(planted.project(), planted.plan(), 2_000))
                .filter(found -> found.points().size() > 3)
                .findFirst()
                .orElseThrow();

        @Test
        void isTheCureWhereNothingIsSaid() {
            assertThat(front.choose(OptionalDouble.empty(), OptionalInt.empty()))
                    .isSameAs(front.cureOnly());
        }

        @Test
        void isTheBestWhereMovesCostNothing() {
            assertThat(front.choose(OptionalDouble.of(0), OptionalInt.empty()))
                    .isSameAs(front.points().get(front.points().size() - 1));
        }

        @Test
        void isTheCureWhereMovesAreBeyondPrice() {
            assertThat(front.choose(OptionalDouble.of(1e6), OptionalInt.empty()))
                    .isSameAs(front.cureOnly());
        }

        @Test
        void hasNoMoreMovesThanAllowed() {
            assertThat(front.points()).hasSizeGreaterThan(2);
            int most = front.points().get(1).moves();

            FrontPoint best = front.choose(OptionalDouble.empty(), OptionalInt.of(most));

            assertThat(best.moves()).isLessThanOrEqualTo(most);
            assertThat(front.choices())
                    .filteredOn(each -> each.moves() <= most)
                    .allSatisfy(each -> assertThat(each.objective()).isGreaterThanOrEqualTo(best.objective()));
            assertThat(front.choose(OptionalDouble.of(0), OptionalInt.of(most))).isSameAs(best);
        }

        @Test
        void isWithinTheFewestMovesWhereNoMoreAreAllowed() {
            int fewest = front.fewestMoves().moves();

            assertThat(front.choose(OptionalDouble.empty(), OptionalInt.of(fewest))
                            .moves())
                    .isEqualTo(fewest);
        }

        @Test
        void staysWhenTheFrontIsThinned() {
            FrontPoint kept = front.points().get(front.points().size() / 2);

            Front thin = front.thinned(3, kept);

            assertThat(thin.points()).hasSizeLessThanOrEqualTo(3).contains(kept, front.cureOnly());
            assertThat(thin.points()).contains(front.points().get(front.points().size() - 1));
        }
    }
}
