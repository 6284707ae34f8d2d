package evenrise.solver.drawing;

import java.awt.geom.Rectangle2D;
import java.util.Map;
import org.abego.treelayout.Configuration;
import org.abego.treelayout.NodeExtentProvider;
import org.abego.treelayout.TreeLayout;
import org.abego.treelayout.util.DefaultConfiguration;
import org.abego.treelayout.util.DefaultTreeForTreeLayout;

/** Places the items of one sheet: parents above the middle of what they feed, levels in rows. */
final class TreeOnSheet {
    static final double BETWEEN_LEVELS = 8;
    private static final double BETWEEN_ITEMS = 4;

    private final TreeLayout<PlacedBlock> layout;

    TreeOnSheet(PlacedBlock root) {
        DefaultTreeForTreeLayout<PlacedBlock> tree = new DefaultTreeForTreeLayout<>(root);
        add(tree, root);
        NodeExtentProvider<PlacedBlock> sizes = new NodeExtentProvider<>() {
            @Override
            public double getWidth(PlacedBlock item) {
                return item.width();
            }

            @Override
            public double getHeight(PlacedBlock item) {
                return item.height();
            }
        };
        layout = new TreeLayout<>(
                tree,
                sizes,
                new DefaultConfiguration<>(
                        BETWEEN_LEVELS,
                        BETWEEN_ITEMS,
                        Configuration.Location.Top,
                        Configuration.AlignmentInLevel.TowardsRoot),
                true);
    }

    private static void add(DefaultTreeForTreeLayout<PlacedBlock> tree, PlacedBlock parent) {
        for (PlacedBlock child : parent.fed()) {
            tree.addChild(parent, child);
            add(tree, child);
        }
    }

    boolean fits() {
        Rectangle2D bounds = layout.getBounds();
        return bounds.getWidth() <= Sheet.WIDTH && bounds.getHeight() <= Sheet.HEIGHT;
    }

    /** In the drawing library's order, which is no order; for reading by item only. */
    Map<PlacedBlock, Rectangle2D.Double> places() {
        return layout.getNodeBounds();
    }

    double height() {
        return layout.getBounds().getHeight();
    }

    double width() {
        return layout.getBounds().getWidth();
    }
}
