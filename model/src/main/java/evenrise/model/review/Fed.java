package evenrise.model.review;

import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;

/**
 * What one node feeds: the supply all that fits somewhere, a panel its own, a further node what is behind it.
 *
 * @param loads at the node's own voltage
 * @param seen all of them, as the node sees them
 */
record Fed(Point point, NodeLimits limits, List<Placement> loads, List<NodeLoads.Seen> seen) {

    /** The supply first, then the panels in the project's order, then further nodes. */
    static List<Fed> all(Layout layout) {
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<Fed> all = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            all.add(new Fed(
                    point,
                    limits.get(point.index()),
                    layout.nodeLoads().direct(point.index()),
                    layout.nodeLoads().seen(point.index())));
        }
        return all;
    }

    String node() {
        return limits.node();
    }

    String label() {
        return limits.label();
    }
}
