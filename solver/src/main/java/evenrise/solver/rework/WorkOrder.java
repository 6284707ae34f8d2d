package evenrise.solver.rework;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The order of work from a plan as built to another.
 *
 * @param least what no order stays below, number by number; that of loads locked out at once holds where the former two
 *     are met
 * @param isProven whether no order is cheaper, by a look at every one
 * @param obstacles what keeps the work from being done in smaller stages, or what is broken on the way; a line each
 * @param breaches what the replay says of the order; none where nothing is broken on the way
 */
public record WorkOrder(
        List<WorkStage> stages,
        OrderCost cost,
        OrderCost least,
        boolean isProven,
        List<String> obstacles,
        List<Breach> breaches) {
    /** How long each shutdown group is out, over all stages; loads without a group are the one without a name. */
    public Map<String, Double> outMinutes() {
        Map<String, Double> out = new TreeMap<>();
        stages.forEach(stage -> stage.outages().forEach(group -> out.merge(group, stage.minutes(), Double::sum)));
        return out;
    }

    /** How long the longest stage takes. */
    public double longestMinutes() {
        return stages.stream().mapToDouble(WorkStage::minutes).max().orElse(0);
    }

    /** The same with other breaches. */
    WorkOrder with(List<Breach> others) {
        return new WorkOrder(stages, cost, least, isProven, obstacles, others);
    }

    public double minutes() {
        return stages.stream().mapToDouble(WorkStage::minutes).sum();
    }

    public WorkOrder {
        stages = List.copyOf(stages);
        obstacles = List.copyOf(obstacles);
        breaches = List.copyOf(breaches);
    }
}
