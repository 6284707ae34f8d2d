package evenrise.model.sizing;

import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Project;
import java.util.List;

/**
 * Proposals for a whole project.
 *
 * @param taken the project with every proposal in it
 * @param open what the checks that were asked, and that of trips at switch-on, still say of it
 */
public record Sizes(List<Proposal> proposals, Project taken, List<Remark> open, boolean hasPlan) {
    public Sizes {
        proposals = List.copyOf(proposals);
        open = List.copyOf(open);
    }

    /** Without a practice nothing is sized. */
    public boolean hasPractice() {
        return taken.electrical().flatMap(Electrical::practice).isPresent();
    }

    public List<Proposal> of(Part part) {
        return proposals.stream().filter(each -> each.part() == part).toList();
    }
}
