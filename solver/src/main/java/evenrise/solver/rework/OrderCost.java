package evenrise.solver.rework;

import java.util.Comparator;

/**
 * What an order of work costs, the dearest first.
 *
 * @param systemOffs stages in which the whole system is off
 * @param isolations panels and boards that are isolated, over all stages
 * @param mostLockedOut loads that are worked on at once, at most
 * @param outages shutdown groups that go out, over all stages
 * @param stages in all
 */
public record OrderCost(int systemOffs, int isolations, int mostLockedOut, int outages, int stages)
        implements Comparable<OrderCost> {
    private static final Comparator<OrderCost> DEAREST_FIRST = Comparator.comparingInt(OrderCost::systemOffs)
            .thenComparingInt(OrderCost::isolations)
            .thenComparingInt(OrderCost::mostLockedOut)
            .thenComparingInt(OrderCost::outages)
            .thenComparingInt(OrderCost::stages);

    static final OrderCost NOTHING = new OrderCost(0, 0, 0, 0, 0);

    OrderCost plus(OrderCost next) {
        return new OrderCost(
                systemOffs + next.systemOffs,
                isolations + next.isolations,
                Math.max(mostLockedOut, next.mostLockedOut),
                outages + next.outages,
                stages + next.stages);
    }

    /** Whether the system, panels and boards are off in as many stages. */
    boolean isAsMuchOff(OrderCost other) {
        return systemOffs == other.systemOffs && isolations == other.isolations;
    }

    @Override
    public int compareTo(OrderCost other) {
        return DEAREST_FIRST.compare(this, other);
    }
}
