package evenrise.solver.report;

import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Where a clamp meter is put after work in a panel: there, and at all that feeds it. */
final class MeteredPoints {
    private MeteredPoints() {}

    /** Ids from a panel up to what feeds it in the end. */
    static List<String> upFrom(Distribution distribution, String panel) {
        List<String> ids = new ArrayList<>();
        Optional<Point> at = distribution.point(panel);
        while (at.isPresent()) {
            ids.add(at.get().id());
            int parent = at.get().parent();
            at = parent < 0
                    ? Optional.empty()
                    : Optional.of(distribution.points().get(parent));
        }
        return ids;
    }

    /** Every phase that some point has. */
    static List<Phase> phases(Distribution distribution) {
        return Arrays.stream(Phase.values())
                .filter(phase -> distribution.points().stream()
                        .anyMatch(point -> point.system().phases().contains(phase)))
                .toList();
    }

    static String label(NodeLimits limits) {
        return limits.kind() == SubjectKind.SUPPLY
                ? NodeFigures.SUPPLY
                : (limits.kind() == SubjectKind.PANEL ? "panel " : "distribution point ") + limits.node();
    }
}
