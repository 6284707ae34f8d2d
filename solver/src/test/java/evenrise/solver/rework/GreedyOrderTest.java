package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ARandomProject;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Orders by rules of thumb, which put many changes in order, beside the cheapest of all orders of the same changes, by a
 * walk over every set of them, and beside what is proven without such a walk: drawn plants of some thirty loads, with and without an end to a stage.
 */
@Tag("random")
class GreedyOrderTest {
    /** A long run tries more by -Devenrise.orders=100. */
    private static final int ORDERS = Integer.getInteger("evenrise.orders", 3);

    private static final int FEWEST_CHANGES = 3;
    private static final int MOST_CHANGES = 7;

    private final List<OrderCost> exact = new ArrayList<>();
    private final List<OrderCost> found = new ArrayList<>();
    /** What is proven of every order of the same changes. */
    private final List<OrderCost> least = new ArrayList<>();

    private int missed;

    private static Optional<Passage> drawn(long seed, NightLimits night) {
        ARandomProject.Planted planted = ARandomProject.planted(seed);
        Project project = Reworked.raised(planted.project(), seed, 5, 0.4);
        Front front = Reworked.front(project, planted.plan(), 1_500);
        BuiltPlant plant = BuiltPlant.of(project, planted.plan(), Optional.empty());
        return front.points().stream()
                .map(point -> new Passage(plant, point.plan(), night))
                .filter(passage -> passage.size() >= FEWEST_CHANGES && passage.size() <= MOST_CHANGES)
                .reduce((one, larger) -> larger);
    }

    private static NightLimits night(long seed) {
        return seed % 2 == 0
                ? NightLimits.NONE
                : new NightLimits(NightLimits.NONE.live(), NightLimits.NONE.mostOut(), List.of(300.0));
    }

    private void compare(Passage passage) {
        Optional<List<BitSet>> cheapest = new EveryOrder(passage).cheapest(1);
        GreedyOrder greedy = new GreedyOrder(passage);
        Optional<List<BitSet>> thumb = greedy.stages(1);
        if (cheapest.isEmpty()) {
            assertThat(thumb).as("no order where there is none").isEmpty();
            return;
        }
        if (thumb.isEmpty()) {
            missed++;
            return;
        }
        exact.add(greedy.cost(cheapest.get()));
        found.add(greedy.cost(thumb.get()));
        least.add(new LeastOrder(passage).beside(greedy.cost(cheapest.get())));
        assertThat(least.get(least.size() - 1).systemOffs())
                .isLessThanOrEqualTo(exact.get(exact.size() - 1).systemOffs());
        assertThat(least.get(least.size() - 1).isolations())
                .isLessThanOrEqualTo(exact.get(exact.size() - 1).isolations());
        assertThat(least.get(least.size() - 1).mostLockedOut())
                .isLessThanOrEqualTo(exact.get(exact.size() - 1).mostLockedOut());
        assertThat(least.get(least.size() - 1).outages())
                .isLessThanOrEqualTo(exact.get(exact.size() - 1).outages());
        assertThat(found.get(found.size() - 1)).isGreaterThanOrEqualTo(exact.get(exact.size() - 1));
    }

    @Test
    void costsLittleMoreThanTheCheapestOfAllOrders() {
        int tried = 0;
        for (long seed = 1; tried < ORDERS && seed < 20L * ORDERS; seed++) {
            Optional<Passage> passage = drawn(seed, night(seed));
            if (passage.isPresent()) {
                tried++;
                compare(passage.get());
            }
        }

        int isolations = exact.stream().mapToInt(OrderCost::isolations).sum();
        int systemOffs = exact.stream().mapToInt(OrderCost::systemOffs).sum();
        int outages = exact.stream().mapToInt(OrderCost::outages).sum();
        int thumbIsolations = found.stream().mapToInt(OrderCost::isolations).sum();
        int thumbSystemOffs = found.stream().mapToInt(OrderCost::systemOffs).sum();
        int thumbOutages = found.stream().mapToInt(OrderCost::outages).sum();
        System.out.printf(
                Locale.ROOT,
                "%d orders, %d missed: system off %d (cheapest %d), isolations %d (%d), outages %d (%d); proven at"
                        + " least: system off %d, isolations %d, outages %d%n",
                exact.size(),
                missed,
                thumbSystemOffs,
                systemOffs,
                thumbIsolations,
                isolations,
                thumbOutages,
                outages,
                least.stream().mapToInt(OrderCost::systemOffs).sum(),
                least.stream().mapToInt(OrderCost::isolations).sum(),
                least.stream().mapToInt(OrderCost::outages).sum());
        assertThat(exact).isNotEmpty();
        assertThat(missed).isLessThanOrEqualTo(tried / 10);
        assertThat(thumbSystemOffs).isLessThanOrEqualTo((int) Math.ceil(1.05 * systemOffs));
        assertThat(thumbIsolations).isLessThanOrEqualTo((int) Math.ceil(1.05 * isolations) + 1);
        assertThat(thumbOutages).isLessThanOrEqualTo((int) Math.ceil(1.05 * outages) + 1);
    }
}
