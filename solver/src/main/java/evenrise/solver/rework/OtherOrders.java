package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What an order of work is compared with, so that whoever works chooses.
 *
 * @param moreAtOnce with more loads locked out at once, which saves stages or outages
 * @param inShifts with no stage longer than a shift, where the order has one that is, which takes the system off more often
 */
public record OtherOrders(List<WorkOrder> moreAtOnce, Optional<WorkOrder> inShifts) {
    /** Common practice, no source: what a crew does between an evening and a morning. */
    public static final double SHIFT_MINUTES = 480;

    private static final int[] SIZES = {2, 4, 8, 16};

    /** More changes than that take long to put in order once more. */
    private static final int MOST_CHANGES = 80;

    public OtherOrders {
        moreAtOnce = List.copyOf(moreAtOnce);
    }

    /** @param order as {@code work} finds it, {@code atOnce} loads locked out at once */
    public static OtherOrders of(
            OrderOfWork work, WorkOrder order, BuiltPlant plant, Plan target, NightLimits night, int atOnce) {
        List<WorkOrder> more = new ArrayList<>();
        WorkOrder last = order;
        for (int size : SIZES) {
            if (size > last.cost().mostLockedOut() && last.stages().size() > 1) {
                WorkOrder next = work.withAtLeast(size);
                if (next.cost().outages() < last.cost().outages()
                        || next.cost().stages() < last.cost().stages()) {
                    more.add(next);
                    last = next;
                }
            }
        }
        boolean isLong =
                order.longestMinutes() > SHIFT_MINUTES && night.windowsMinutes().isEmpty();
        if (!isLong || work.changes() > MOST_CHANGES) {
            return new OtherOrders(more, Optional.empty());
        }
        NightLimits shift = new NightLimits(night.live(), night.mostOut(), List.of(SHIFT_MINUTES));
        WorkOrder shorter = new OrderOfWork(plant, target, shift).withAtLeast(atOnce);
        return new OtherOrders(
                more,
                Optional.of(shorter).filter(it -> it.breaches().isEmpty() && it.longestMinutes() <= SHIFT_MINUTES));
    }
}
