package evenrise.solver.engine.nearby;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * The best plan met so far for each number of moves, and for each cost of them where there are prices: of those that no
 * plan of fewer moves, or of less cost, equals. One thread offers; any may take a copy.
 */
final class NearbyArchive {
    private final Staircase byMoves = new Staircase();
    private final Staircase byCost = new Staircase();
    private final PlanMapper mapper;

    NearbyArchive(CompiledProject compiled) {
        mapper = new PlanMapper(compiled);
    }

    /** Keeps the plan where it is better than all of as few moves, or of as little cost. */
    void offer(PlanSums sums, BuiltPositions positions) {
        int moves = positions.moves();
        boolean isFew = byMoves.wants(moves, sums.hardCharge(), sums.objectiveMilliAmps());
        int cost = positions.isPriced() ? steps(positions.price(Leg.Counted.COST)) : 0;
        boolean isCheap = positions.isPriced() && byCost.wants(cost, sums.hardCharge(), sums.objectiveMilliAmps());
        if (isFew || isCheap) {
            Staircase.Kept plan =
                    new Staircase.Kept(sums.snapshot(), moves, sums.hardCharge(), sums.objectiveMilliAmps());
            synchronized (this) {
                if (isFew) {
                    byMoves.keep(moves, plan);
                }
                if (isCheap) {
                    byCost.keep(cost, plan);
                }
            }
        }
    }

    /** Costs that are told apart: a tenth of a move. */
    private static int steps(double cost) {
        return (int) Math.min(Integer.MAX_VALUE, Math.round(10 * cost));
    }

    /** Takes over whatever is better in another one. */
    synchronized void offerAll(NearbyArchive other) {
        synchronized (other) {
            byMoves.offerAll(other.byMoves);
            byCost.offerAll(other.byCost);
        }
    }

    /** The plan that a price per move would choose. */
    PlanSnapshot best(double perMoveAmps, Leg.Counted counted) {
        return counted == Leg.Counted.COST ? byCost.best(perMoveAmps / 10) : byMoves.best(perMoveAmps);
    }

    /** Every plan kept: by rising moves, as it falls in broken rules, then in the objective; then others by rising cost. */
    List<NearbyPlan> plans() {
        return kept().map(each -> new NearbyPlan(
                        each.moves(),
                        each.hardCharge(),
                        each.objectiveMilliAmps() / 1000.0,
                        mapper.toPlan(each.plan())))
                .toList();
    }

    private Stream<Staircase.Kept> kept() {
        List<Staircase.Kept> all = new ArrayList<>();
        byMoves.plans().forEach(all::add);
        StreamSupport.stream(byCost.plans().spliterator(), false)
                .filter(each -> !all.contains(each))
                .toList()
                .forEach(all::add);
        return all.stream();
    }

    List<PlanSnapshot> snapshots() {
        return kept().map(Staircase.Kept::plan).toList();
    }
}
