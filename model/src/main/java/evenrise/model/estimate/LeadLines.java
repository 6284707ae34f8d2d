package evenrise.model.estimate;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Catalogue;
import evenrise.model.project.LabourHours;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Control leads whose board is in another panel than their breaker. A plan says which these are. */
public final class LeadLines {
    private LeadLines() {}

    /** Whether the catalogue says what they cost. */
    public static boolean arePriced(Project project) {
        return project.catalogue()
                .filter(it -> it.leadBetweenPanels().isPresent() || hours(it).isPresent())
                .isPresent();
    }

    public static int between(Project project, Plan plan) {
        Map<String, String> panelOf = new HashMap<>();
        project.boards().forEach(board -> panelOf.put(board.id(), board.panel()));
        Map<String, Load> loads = new HashMap<>();
        project.loads().forEach(load -> loads.put(load.id(), load));
        int count = 0;
        for (Assignment each : plan.assignments()) {
            boolean hasLead = Optional.ofNullable(loads.get(each.load()))
                    .filter(PlantLines::hasLead)
                    .isPresent();
            Optional<String> from = each.board().map(panelOf::get);
            count += hasLead && from.isPresent() && !from.get().equals(each.panel()) ? 1 : 0;
        }
        return count;
    }

    /** None where the catalogue says nothing of them, or there are none. */
    static List<BillLine> of(Project project, Plan plan) {
        int count = between(project, plan);
        if (!arePriced(project) || count == 0) {
            return List.of();
        }
        Catalogue catalogue = project.catalogue().orElseThrow();
        List<BillLine> lines = new ArrayList<>();
        BigDecimal quantity = BigDecimal.valueOf(count);
        catalogue
                .leadBetweenPanels()
                .ifPresent(price -> lines.add(BillLine.material(
                        "control lead between panels", quantity, Optional.of(BigDecimal.valueOf(price)))));
        if (hours(catalogue).isPresent()) {
            lines.add(new WorkPrice(catalogue)
                    .line(
                            "work: control lead between panels",
                            quantity,
                            OptionalDouble.empty(),
                            LabourHours::perLeadBetweenPanels));
        }
        return lines;
    }

    private static OptionalDouble hours(Catalogue catalogue) {
        return catalogue.labourHours().map(LabourHours::perLeadBetweenPanels).orElse(OptionalDouble.empty());
    }
}
