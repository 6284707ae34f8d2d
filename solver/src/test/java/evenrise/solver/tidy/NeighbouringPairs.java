package evenrise.solver.tidy;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Alike loads that follow each other by name.
 *
 * @param all such pairs
 * @param backAlongSlots those of which the second lies before the first
 * @param backAlongOutputs those of which the second's output stands before the first's
 */
record NeighbouringPairs(int all, int backAlongSlots, int backAlongOutputs) {
    static NeighbouringPairs of(Project project, Plan plan) {
        PlaceOrder order = new PlaceOrder(project);
        Map<String, Assignment> places = new HashMap<>();
        plan.assignments().forEach(each -> places.put(each.load(), each));
        int all = 0;
        int slots = 0;
        int outputs = 0;
        for (List<String> set : AlikeLoads.of(project, any -> true)) {
            for (int i = 1; i < set.size(); i++) {
                Assignment first = places.get(set.get(i - 1));
                Assignment second = places.get(set.get(i));
                all++;
                slots += order.alongSlots().compare(first, second) > 0 ? 1 : 0;
                outputs += order.output(first) > order.output(second) ? 1 : 0;
            }
        }
        return new NeighbouringPairs(all, slots, outputs);
    }
}
