package evenrise.model.check;

import evenrise.model.contract.FormatVersion;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Finds what makes a plan no plan, as opposed to a plan that breaks rules. */
public final class PlanChecks {
    private PlanChecks() {}

    /** The format is ours and no board is set twice. */
    public static List<Objection> errors(Plan plan) {
        List<Objection> found = new ArrayList<>();
        if (!FormatVersion.isRead(plan.format(), Plan.FORMAT)) {
            found.add(Identity.format(plan.format(), Plan.FORMAT));
        }
        Identity.unique("/boards", plan.boards(), BoardSetting::id, found::add);
        return found;
    }

    /** Every board that is set is one of the project's. */
    public static List<Objection> errors(Plan plan, Project project) {
        Set<String> known = project.boards().stream().map(Board::id).collect(Collectors.toSet());
        List<Objection> found = new ArrayList<>();
        for (int i = 0; i < plan.boards().size(); i++) {
            String id = plan.boards().get(i).id();
            if (!known.contains(id)) {
                String cure = Nearest.cure(id, known, "Maybe the plan is of another project, or of an earlier state.");
                found.add(Objection.error(
                        "/boards/" + i + "/id", Shown.quoted(id), "the id of one of the project's boards", cure));
            }
        }
        return found;
    }
}
