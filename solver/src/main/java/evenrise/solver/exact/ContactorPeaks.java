package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.rules.SceneCurrents;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a phase of a point bears at least when one contactor closes. */
final class ContactorPeaks {
    private final CpModel model;
    private final Project project;
    private final SceneCurrents scenes;
    private final boolean tellsRolesApart;

    ContactorPeaks(CpModel model, Project project, SceneCurrents scenes, boolean tellsRolesApart) {
        this.model = model;
        this.project = project;
        this.scenes = scenes;
        this.tellsRolesApart = tellsRolesApart;
    }

    /**
     * What one contactor closes comes on at one instant: base and excess of all of it. It finds what is never switched,
     * what earlier roles of its system draw, and what other systems do.
     */
    void bear(IntVar peak, List<PhaseItem> items) {
        Map<String, List<PhaseItem>> together = new LinkedHashMap<>();
        Map<String, Role> roles = new HashMap<>();
        Set<String> several = new HashSet<>();
        for (PhaseItem item : items) {
            Load load = item.load();
            if (load.switched()) {
                String lead = load.comesWith().orElse(load.id());
                together.computeIfAbsent(lead, any -> new ArrayList<>()).add(item);
                roles.merge(lead, load.role(), (one, other) -> one.compareTo(other) > 0 ? one : other);
                if (!lead.equals(load.id())) {
                    several.add(lead);
                }
            }
        }
        together.keySet().retainAll(several);
        together.forEach((lead, own) -> {
            LinearExprBuilder sum = LinearExpr.newBuilder();
            own.forEach(item -> sum.addTerm(item.there(), item.base() + item.excess()));
            Optional<String> system = own.get(0).load().system();
            for (PhaseItem item : items) {
                boolean isOther = project.hasClocks() && !item.load().system().equals(system);
                if (!item.load().switched() || isOther) {
                    sum.addTerm(item.there(), project.hasClocks() ? item.use(scenes) : item.base());
                } else if (tellsRolesApart
                        && !own.contains(item)
                        && item.load().system().equals(system)
                        && item.load().role().compareTo(roles.get(lead)) < 0) {
                    sum.addTerm(item.there(), item.base());
                }
            }
            model.addGreaterOrEqual(peak, sum.build());
        });
    }
}
