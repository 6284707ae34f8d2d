package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an order of work is compared with, so that whoever works chooses.
 *
 * @param moreAtOnce with more loads locked out at once, which saves stages or outages
 * @param inOneGo the one that takes off least often, where the order is in parts so that no stage is longer than a shift
 * @param leastStages no order whose stages are as short has fewer; 0 where nothing is known
 */
public record OtherOrders(List<WorkOrder> moreAtOnce, Optional<WorkOrder> inOneGo, int leastStages) {
    private static final int[] SIZES = {2, 4, 8, 16};

    public OtherOrders {
        moreAtOnce = List.copyOf(moreAtOnce);
    }

    public static OtherOrders of(OrderChoice choice) {
        List<WorkOrder> more = new ArrayList<>();
        WorkOrder last = choice.order();
        for (int size : SIZES) {
            if (size > last.cost().mostLockedOut() && last.stages().size() > 1) {
                WorkOrder next = choice.work().withAtLeast(size);
                if (next.cost().outages() < last.cost().outages()
                        || next.cost().stages() < last.cost().stages()) {
                    more.add(next);
                    last = next;
                }
            }
        }
        return new OtherOrders(more, choice.inOneGo(), choice.leastStages());
    }
}
