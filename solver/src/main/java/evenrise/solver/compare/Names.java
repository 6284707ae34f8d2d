package evenrise.solver.compare;

import evenrise.model.project.Board;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import java.util.HashSet;
import java.util.Set;

/** Names of new panels and boards: P1, P2 and B1, B2, but none that something else has. */
final class Names {
    private final Set<String> taken = new HashSet<>();
    private final Set<String> takenBoards = new HashSet<>();
    private int panels;
    private int boards;

    private Names() {}

    static Names besides(Project project, Variation variation) {
        Names names = new Names();
        project.nodes().stream().map(DistributionNode::id).forEach(names.taken::add);
        variation.panelsThatStay().stream().map(Panel::id).forEach(names.taken::add);
        variation.boardsThatStay().stream().map(Board::id).forEach(names.takenBoards::add);
        return names;
    }

    String panel() {
        String name;
        do {
            name = "P" + ++panels;
        } while (taken.contains(name));
        return name;
    }

    String board() {
        String name;
        do {
            name = "B" + ++boards;
        } while (takenBoards.contains(name));
        return name;
    }
}
