package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.exact.ExactBounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Tiny plants whose loads draw more than planned, and of which one load is gone: moves, claims and orders of work beside a
 * look at every plan and every order.
 */
@Tag("random")
class TinyReworkTest {
    /** A long run tries more by -Devenrise.reworks=500. */
    private static final int REWORKS = Integer.getInteger("evenrise.reworks", 2);

    /** More single changes than that have too many orders to look at every one. */
    private static final int MOST_CHANGES = 5;

    /** One plant as built, with gear in the free slot that the project knows no more. */
    private record Case(Project project, BuiltPlant plant, TreeMap<Integer, Double> exact) {}

    @Test
    void takeTheFewestMovesInTheCheapestOrderWithoutALiveStep() {
        int tried = 0;
        int orders = 0;
        int proven = 0;
        double outages = 0;
        double fewestOutages = 0;
        for (long seed = 1; tried < REWORKS; seed++) {
            Optional<Case> drawn = drawn(seed);
            if (drawn.isEmpty()) {
                continue;
            }
            tried++;
            Project project = drawn.get().project();
            BuiltPlant plant = drawn.get().plant();
            Front front = front(project, plant, seed);
            assertThat(front.fewestMoves().violations()).as("seed %d", seed).isZero();
            assertThat(front.fewestMoves().moves())
                    .as("fewest moves, seed %d", seed)
                    .isEqualTo(drawn.get().exact().firstKey());
            int atLeast = new ExactBounds().leastMoves(request(project, plant), plant.staying());
            assertThat(atLeast)
                    .as("proven by a program, seed %d", seed)
                    .isLessThanOrEqualTo(drawn.get().exact().firstKey());
            proven += atLeast == drawn.get().exact().firstKey() ? 1 : 0;
            assertThat(front.leastBreakers())
                    .as("proven, seed %d", seed)
                    .isLessThanOrEqualTo(front.fewestMoves().changes().breakers());

            Plan target = front.fewestMoves().plan();
            Passage passage = new Passage(plant, target, NightLimits.NONE);
            if (passage.size() > MOST_CHANGES) {
                continue;
            }
            List<OrderCost> costs = new ArrayList<>();
            EveryOrderedPartition.of(
                    passage.size(),
                    stages -> ReplayedOrder.cost(passage, target, stages).ifPresent(costs::add));
            LeastOrder bound = new LeastOrder(passage);
            for (OrderCost cost : costs) {
                OrderCost bounded = bound.beside(cost);
                assertThat(cost.systemOffs())
                        .as("system offs, seed %d", seed)
                        .isGreaterThanOrEqualTo(bounded.systemOffs());
                assertThat(cost.isolations())
                        .as("isolations, seed %d", seed)
                        .isGreaterThanOrEqualTo(bounded.isolations());
                assertThat(cost.mostLockedOut())
                        .as("locked out, seed %d", seed)
                        .isGreaterThanOrEqualTo(bounded.mostLockedOut());
                assertThat(cost.outages()).as("outages, seed %d", seed).isGreaterThanOrEqualTo(bounded.outages());
            }
            WorkOrder order = new OrderOfWork(plant, target, NightLimits.NONE).withAtLeast(1);

            assertThat(order.breaches().isEmpty()).as("seed %d", seed).isEqualTo(!costs.isEmpty());
            if (!costs.isEmpty()) {
                OrderCost least = costs.stream()
                        .map(ReplayedOrder::leastOneAtOnce)
                        .min(OrderCost::compareTo)
                        .orElseThrow();
                assertThat(ReplayedOrder.leastOneAtOnce(order.cost()))
                        .as("order, seed %d", seed)
                        .isEqualTo(least);
                orders++;
                outages += order.cost().outages();
                fewestOutages += least.outages();
            }
        }

        System.out.printf(
                Locale.ROOT,
                "%d reworks: fewest moves proven of %d, orders compared of %d, outages %.0f (least %.0f)%n",
                tried,
                proven,
                orders,
                outages,
                fewestOutages);
        assertThat(proven).as("of most the program proves the number itself").isGreaterThanOrEqualTo(tried / 2);
        assertThat(orders).isPositive();
        assertThat(outages).isLessThanOrEqualTo(1.05 * fewestOutages);
    }

    private static Optional<Case> drawn(long seed) {
        Project drawn = Reworked.tiny(seed);
        Optional<Plan> sound = firstSound(drawn);
        if (sound.isEmpty()) {
            return Optional.empty();
        }
        Project project = Reworked.raised(drawn, seed, 2, 0.3);
        TreeMap<Integer, Double> exact = EveryNearbyPlan.front(project, sound.get());
        if (exact.isEmpty()) {
            return Optional.empty();
        }
        Plan built = withOldGear(project, sound.get());
        return Optional.of(new Case(project, BuiltPlant.of(project, built, was(project, seed)), exact));
    }

    private static Optional<Plan> firstSound(Project project) {
        return EveryNearbyPlan.first(
                project,
                plan -> Referee.judge(project, PlanFinisher.timed(project, plan))
                        .violations()
                        .isEmpty());
    }

    /** In the last slot that is free, on no output. */
    private static Plan withOldGear(Project project, Plan sound) {
        Panel panel = project.panels().get(0);
        int free = IntStream.rangeClosed(1, panel.slots())
                .filter(slot -> !panel.reservedSlots().contains(slot))
                .filter(slot -> sound.assignments().stream().noneMatch(seat -> seat.slot() == slot))
                .max()
                .orElseThrow();
        List<Assignment> seats = new ArrayList<>(sound.assignments());
        seats.add(Assignment.builder()
                .load("old")
                .panel(panel.id())
                .slot(free)
                .phases(List.of(new ProjectIndex(project).slotsOf(panel).phase(free)))
                .board(Optional.empty())
                .output(OptionalInt.empty())
                .build());
        return sound.with().assignments(seats).build();
    }

    /** Of every other plant somebody knows what the old gear draws. */
    private static Optional<Project> was(Project project, long seed) {
        if (seed % 2 == 0) {
            return Optional.empty();
        }
        List<Load> loads = new ArrayList<>(project.loads());
        loads.add(Load.builder()
                .id("old")
                .role(Role.AMPLIFIER)
                .breakerAmps(16)
                .runningAmps(2)
                .switched(false)
                .build());
        return Optional.of(project.withLoads(loads));
    }

    private static PlanningRequest request(Project project, BuiltPlant plant) {
        return new PlanningRequest(project, Optional.of(plant.staying()), new Budget.Moves(50_000), 1, 1);
    }

    private static Front front(Project project, BuiltPlant plant, long seed) {
        NearbySearch search = Reworked.search(project, plant.staying(), seed);
        search.search(new Budget.Moves(6_000));
        return Front.of(plant, search.plans().stream().map(NearbyPlan::plan).toList());
    }
}
