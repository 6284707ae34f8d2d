package evenrise.solver.report;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.Project;
import evenrise.solver.rework.Downstream;
import java.util.Set;

/** What else is dead with an isolated panel, and which other feeds are locked with it. */
final class TreeText {
    private final Project project;

    TreeText(Project project) {
        this.project = project;
    }

    /** A sentence or more, with a space before; nothing where the panel feeds no other. */
    String below(String panel) {
        Set<String> below = Downstream.below(project, Set.of(panel));
        if (below.isEmpty()) {
            return "";
        }
        StringBuilder text = new StringBuilder(" With it "
                + String.join(", ", below) + (below.size() == 1 ? " is" : " are")
                + " dead, which it feeds: test there, too, before anybody touches anything.");
        for (DistributionNode node : project.nodes()) {
            node.alternateFedFrom()
                    .filter(other -> below.contains(node.id()))
                    .ifPresent(other -> text.append(" Hold the transfer of ")
                            .append(node.id())
                            .append(" where it is, and lock and tag its other feed, from ")
                            .append(other)
                            .append(", before."));
        }
        return text.toString();
    }
}
