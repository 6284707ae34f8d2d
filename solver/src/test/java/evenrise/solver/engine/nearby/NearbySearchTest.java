package evenrise.solver.engine.nearby;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.Progress;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class NearbySearchTest {
    private final ARandomProject.Planted planted = ARandomProject.planted(3);

    @Test
    void givesTheSamePlansForTheSameSeedMovesAndNumberOfSearches() {
        assertThat(plans(3)).isEqualTo(plans(3));
    }

    @Test
    void isNoWorseWithMoreSearches() {
        List<NearbyPlan> one = plans(1);
        List<NearbyPlan> three = plans(3);

        for (NearbyPlan each : one) {
            assertThat(three)
                    .anyMatch(other -> other.moves() <= each.moves()
                            && other.hardCharge() <= each.hardCharge()
                            && (other.hardCharge() < each.hardCharge() || other.objective() <= each.objective()));
        }
    }

    private List<NearbyPlan> plans(int searches) {
        NearbySearch search = new NearbySearch(planted.project(), planted.plan(), 1);
        search.search(new Budget.Moves(2_000), searches);
        return search.plans();
    }

    @Test
    void triesNoMoreMovesThanTheBudgetOfEachSearch() {
        NearbySearch search = new NearbySearch(planted.project(), planted.plan(), 1);

        search.search(new Budget.Moves(500), 2);

        assertThat(search.tried()).isBetween(600L, 1_000L);
    }

    @Test
    void tellsOfTheBestPlan() {
        List<Progress> told = new CopyOnWriteArrayList<>();
        NearbySearch search = new NearbySearch(planted.project(), planted.plan(), 1, told::add);

        search.search(new Budget.Moves(2_000));

        assertThat(told).isNotEmpty();
        Progress last = told.get(told.size() - 1);
        double least = search.plans().get(search.plans().size() - 1).objective();
        assertThat(last.hardViolations()).isZero();
        assertThat(last.objective()).isEqualTo(least);
    }

    /** From the first word of it on, while the budget would last for an hour. */
    @Test
    @Timeout(60)
    void endsSoonWhenItIsStopped() {
        AtomicReference<NearbySearch> running = new AtomicReference<>();
        NearbySearch search = new NearbySearch(
                planted.project(), planted.plan(), 1, progress -> running.get().stop());
        running.set(search);

        search.search(new Budget.Time(Duration.ofHours(1)), 2);

        assertThat(search.plans()).isNotEmpty();
    }

    @Test
    void doesNotBeginWhereItWasStoppedBefore() {
        NearbySearch search = new NearbySearch(planted.project(), planted.plan(), 1);
        search.stop();

        search.search(new Budget.Moves(1_000_000), 1);

        assertThat(search.tried()).isLessThan(1_000);
    }
}
