package evenrise.solver.rework;

import evenrise.model.project.Board;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.ProjectIndex;
import java.util.Collection;
import java.util.Set;
import java.util.TreeSet;

/** What hangs on what in the distribution: who is dead with a panel that is isolated. */
public final class Downstream {
    private Downstream() {}

    /** Ids of panels and nodes that one of these panels feeds, at any depth, without the panels themselves. */
    public static Set<String> below(Project project, Collection<String> panels) {
        return below(new ProjectIndex(project), panels);
    }

    static Set<String> below(ProjectIndex index, Collection<String> panels) {
        Set<String> below = new TreeSet<>();
        if (index.project().nodes().isEmpty()
                && index.project().panels().stream()
                        .allMatch(panel -> panel.fedFrom().isEmpty())) {
            return below;
        }
        for (Point point : index.distribution().points()) {
            if (!panels.contains(point.id()) && isFedByOne(index.distribution(), point, panels)) {
                below.add(point.id());
            }
        }
        return below;
    }

    private static boolean isFedByOne(Distribution distribution, Point point, Collection<String> panels) {
        Point at = point;
        while (at.parent() >= 0) {
            at = distribution.points().get(at.parent());
            if (panels.contains(at.id())) {
                return true;
            }
        }
        return false;
    }

    /** Ids of panels and nodes whose loss takes a board's own supply: the panel that houses it, and what is said to feed it. */
    static Set<String> supplies(Board board) {
        Set<String> supplies = new TreeSet<>(Set.of(board.panel()));
        board.fedBy().ifPresent(supplies::add);
        return supplies;
    }

    /** Panels that feed this panel or node, at any depth. */
    static Set<String> panelsAbove(ProjectIndex index, String id) {
        Set<String> above = new TreeSet<>();
        index.distribution().point(id).ifPresent(point -> {
            Point at = point;
            while (at.parent() >= 0) {
                at = index.distribution().points().get(at.parent());
                at.panel().ifPresent(found -> above.add(found.id()));
            }
        });
        return above;
    }

    /** Points between a panel and what feeds it in the end. */
    static int depth(ProjectIndex index, String panel) {
        int depth = 0;
        Point at = index.panel(panel).map(index.distribution()::of).orElse(null);
        while (at != null && at.parent() >= 0) {
            depth++;
            at = index.distribution().points().get(at.parent());
        }
        return depth;
    }
}
