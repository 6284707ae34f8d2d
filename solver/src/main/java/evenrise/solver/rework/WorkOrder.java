package evenrise.solver.rework;

import java.util.List;

/**
 * The order of work from a plan as built to another.
 *
 * @param isProven whether no order is cheaper, by a look at every one
 * @param obstacles what keeps the work from being done in smaller stages, or what is broken on the way; a line each
 * @param breaches what the replay says of the order; none where nothing is broken on the way
 */
public record WorkOrder(
        List<WorkStage> stages, OrderCost cost, boolean isProven, List<String> obstacles, List<Breach> breaches) {
    public WorkOrder {
        stages = List.copyOf(stages);
        obstacles = List.copyOf(obstacles);
        breaches = List.copyOf(breaches);
    }
}
