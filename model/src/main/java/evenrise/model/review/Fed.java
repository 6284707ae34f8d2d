package evenrise.model.review;

import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;

/** The loads that one node feeds: the supply all that fit somewhere, a panel its own. */
record Fed(NodeLimits limits, List<Placement> loads) {

    /** The supply first, then the panels in the project's order. */
    static List<Fed> all(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<Fed> all = new ArrayList<>();
        all.add(new Fed(
                limits.get(0),
                layout.placements().stream().filter(Placement::fits).toList()));
        List<Panel> panels = layout.project().panels();
        for (int i = 0; i < panels.size(); i++) {
            all.add(new Fed(limits.get(i + 1), layout.in(panels.get(i))));
        }
        return all;
    }

    String node() {
        return limits.node();
    }
}
