package evenrise.solver.tidy;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Gives the places that a set of alike loads has to those loads in natural order along panels and slots. Of places in one
 * panel on the same phases the outputs, too, rise along the slots: which of them is switched when is the same to every
 * node above.
 */
final class RisingNames {
    /** Places that differ in nothing but slot and output. */
    private record Spot(String panel, List<Phase> phases) {}

    private final PlaceOrder order;

    RisingNames(PlaceOrder order) {
        this.order = order;
    }

    Plan of(Plan plan, List<List<String>> alike) {
        Map<String, Assignment> assignments = new LinkedHashMap<>();
        plan.assignments().forEach(each -> assignments.put(each.load(), each));
        alike.forEach(set -> rename(set, assignments));
        return plan.withAssignments(List.copyOf(assignments.values()));
    }

    private void rename(List<String> loads, Map<String, Assignment> assignments) {
        List<Assignment> places = new ArrayList<>(
                loads.stream().map(assignments::get).filter(Objects::nonNull).toList());
        if (places.size() < loads.size()) {
            return;
        }
        places.sort(order.alongSlots());
        Map<Spot, List<Assignment>> outputs = new HashMap<>();
        places.forEach(each ->
                outputs.computeIfAbsent(spot(each), any -> new ArrayList<>()).add(each));
        outputs.values().forEach(each -> each.sort(Comparator.comparingLong(order::output)));
        for (int i = 0; i < loads.size(); i++) {
            Assignment slot = places.get(i);
            Assignment output = outputs.get(spot(slot)).remove(0);
            assignments.put(
                    loads.get(i),
                    slot.with()
                            .load(loads.get(i))
                            .board(output.board())
                            .output(output.output())
                            .onSeconds(output.onSeconds())
                            .offSeconds(output.offSeconds())
                            .build());
        }
    }

    private static Spot spot(Assignment place) {
        return new Spot(place.panel(), place.phases());
    }
}
