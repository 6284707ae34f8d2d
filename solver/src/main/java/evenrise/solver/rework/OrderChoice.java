package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.List;
import java.util.Optional;

/**
 * The order of work that is written: the one that costs least, unless that has a stage longer than a shift, nobody states
 * nights, and one with shorter stages exists. Nobody works for days on end with the system off.
 *
 * @param work that found it
 * @param inOneGo the one that costs least, where it is another
 * @param leastStages no order whose stages are as short has fewer; 0 where nothing is known
 */
public record OrderChoice(OrderOfWork work, WorkOrder order, Optional<WorkOrder> inOneGo, int leastStages) {
    /** Common practice, no source: what a crew does between an evening and a morning. */
    public static final double SHIFT_MINUTES = 480;

    /** More changes than that take long to put in order once more. */
    private static final int MOST_CHANGES = 80;

    /** @param atOnce loads that may be locked out at once */
    public static OrderChoice of(BuiltPlant plant, Plan target, NightLimits night, int atOnce) {
        OrderOfWork work = new OrderOfWork(plant, target, night);
        WorkOrder cheapest = work.withAtLeast(atOnce);
        Optional<Double> longest = night.windowsMinutes().stream().max(Double::compare);
        boolean isLong = longest.isEmpty() && cheapest.longestMinutes() > SHIFT_MINUTES;
        if (isLong && work.changes() <= MOST_CHANGES) {
            NightLimits shift = new NightLimits(night.live(), night.mostOut(), List.of(SHIFT_MINUTES));
            OrderOfWork inParts = new OrderOfWork(plant, target, shift);
            WorkOrder shorter = inParts.withAtLeast(atOnce);
            if (shorter.breaches().isEmpty() && shorter.longestMinutes() <= SHIFT_MINUTES) {
                return new OrderChoice(inParts, shorter, Optional.of(cheapest), inParts.leastStages(SHIFT_MINUTES));
            }
        }
        return new OrderChoice(
                work, cheapest, Optional.empty(), longest.map(work::leastStages).orElse(0));
    }
}
