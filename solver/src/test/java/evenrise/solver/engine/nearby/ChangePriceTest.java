package evenrise.solver.engine.nearby;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.rework.Changes;
import evenrise.solver.rework.NightPrices;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the search takes a plan to cost is what the front says of it. */
class ChangePriceTest {
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void isTheCostOfTheNightInBreakersThatStayInTheirPanel(long seed) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Project project = planted.project();
        Plan built = planted.plan();
        NightPrices prices = NightPrices.of(project, built);
        ChangePrices forSearch = prices.forSearch();
        NearbySearch search = new NearbySearch(project, built, seed, progress -> {}, Optional.of(forSearch));
        search.search(new Budget.Moves(3_000));
        PlanMapper mapper = new PlanMapper(new CompiledProject(project));
        double unit = forSearch.samePanel() + forSearch.test();

        assertThat(search.plans()).isNotEmpty();
        for (NearbyPlan each : search.plans()) {
            PlanSums sums = mapper.toSums(built);
            BuiltPositions positions = new BuiltPositions(sums, Optional.of(forSearch));
            PlanSums other = mapper.toSums(each.plan());
            positions.refreshAll(other);

            double minutes = prices.cost(Changes.between(new ProjectIndex(project), built, each.plan()))
                    .minutes();

            assertThat(positions.price(Leg.Counted.COST) * unit).isCloseTo(minutes, within(1e-6));
        }
    }
}
