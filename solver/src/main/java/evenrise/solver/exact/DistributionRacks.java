package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.solver.exact.DistributionSeating.Choice;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Panels that racks are spread over. */
final class DistributionRacks {
    private DistributionRacks() {}

    /**
     * Adds what each rack's panels beyond the first cost.
     *
     * @param units of the objective for one of them
     */
    static void cost(
            CpModel model,
            Project project,
            List<Load> loads,
            DistributionSeating seating,
            LinearExprBuilder sum,
            long units) {
        Map<String, List<Load>> racks = new LinkedHashMap<>();
        loads.forEach(load -> load.rack()
                .ifPresent(rack ->
                        racks.computeIfAbsent(rack, any -> new ArrayList<>()).add(load)));
        racks.forEach((rack, members) -> {
            for (int panel = 0; panel < project.panels().size(); panel++) {
                BoolVar used = model.newBoolVar("");
                for (Load load : members) {
                    for (Choice choice : seating.of(load)) {
                        if (choice.seat().panel() == panel) {
                            model.addImplication(choice.taken(), used);
                        }
                    }
                }
                sum.addTerm(used, units);
            }
            sum.add(-units);
        });
    }
}
