package evenrise.model.rules;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Device;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What feeds what: the supply, then the panels in the project's order, then its further nodes. A project without nodes is
 * the supply with its panels. Made once of a project without errors.
 */
public final class Distribution {
    /** The supply's place in {@link #points()}. */
    public static final int SUPPLY = 0;

    /**
     * One point of the tree.
     *
     * @param index its place in {@link #points()}
     * @param id the panel's, the node's, or {@link NodeFigures#SUPPLY}
     * @param panel the panel that it is
     * @param node the further node that it is
     * @param parent place of what feeds it; −1 for the supply and for sources
     * @param system that it lives at: of a transformer that of the secondary
     * @param lineToNeutralVolts that it lives at
     * @param transformer what it draws from its parent, where it is a secondary
     * @param origin place of the transformer or source whose voltages it has
     */
    public record Point(
            int index,
            String id,
            Optional<Panel> panel,
            Optional<DistributionNode> node,
            int parent,
            PhaseSystem system,
            double lineToNeutralVolts,
            Optional<TransformerDraw> transformer,
            int origin) {

        /** Wiring before it: of a transformer on its primary side. */
        public Optional<Feeder> feeder() {
            return panel.flatMap(Panel::feeder).or(() -> node.flatMap(DistributionNode::feeder));
        }

        /** Rated rms current of each line of a panel or node. */
        public double ratedAmps() {
            return panel.map(Panel::ratedAmps)
                    .orElseGet(() -> node.orElseThrow().ratedAmps());
        }

        /** Capacity of the neutral of a panel or node over that of a line. */
        public double neutralFactor() {
            return panel.map(Panel::neutralFactor)
                    .orElseGet(() -> node.orElseThrow().neutralFactor());
        }

        /** What a panel or node can interrupt, where that is stated. */
        public OptionalDouble interruptingAmps() {
            return panel.map(Panel::interruptingAmps)
                    .or(() -> node.map(DistributionNode::interruptingAmps))
                    .orElse(OptionalDouble.empty());
        }

        /** What is known of a device before all that it feeds, at its own voltage. */
        public Optional<Device> main() {
            return panel.flatMap(Panel::main).or(() -> node.flatMap(DistributionNode::main));
        }

        public boolean isSupply() {
            return index == SUPPLY;
        }

        /** As messages call it. */
        public String label() {
            return isSupply()
                    ? "the supply"
                    : (panel.isPresent() ? "panel " : "distribution point ") + Phrase.quoted(id);
        }

        /** Whether it is a source beside the supply. */
        public boolean isFurtherSource() {
            return node.flatMap(DistributionNode::source).isPresent();
        }
    }

    private record Raw(String id, Optional<String> fedFrom, Optional<Panel> panel, Optional<DistributionNode> node) {}

    private final List<Point> points;
    private final int[] topDown;
    private final Map<String, Integer> panels = new HashMap<>();
    private final List<List<Integer>> behindTransformers = new ArrayList<>();

    private Distribution(Project project) {
        List<Raw> raw = new ArrayList<>();
        raw.add(new Raw(NodeFigures.SUPPLY, Optional.empty(), Optional.empty(), Optional.empty()));
        project.panels()
                .forEach(each -> raw.add(new Raw(each.id(), each.fedFrom(), Optional.of(each), Optional.empty())));
        project.nodes()
                .forEach(each -> raw.add(new Raw(each.id(), each.fedFrom(), Optional.empty(), Optional.of(each))));
        int[] parents = parents(raw);
        topDown = topDown(parents);
        Point[] made = new Point[raw.size()];
        for (int at : topDown) {
            made[at] = point(at, raw.get(at), parents[at] < 0 ? null : made[parents[at]], project);
        }
        points = List.of(made);
        points.forEach(each -> {
            each.panel().ifPresent(panel -> panels.put(panel.id(), each.index()));
            behindTransformers.add(new ArrayList<>());
        });
        for (Point each : points) {
            if (each.transformer().isPresent()) {
                onward(each.parent()).forEach(at -> behindTransformers.get(at).add(each.index()));
            }
        }
    }

    /** Time and space: panels and nodes, and how deep they are nested. */
    public static Distribution of(Project project) {
        return new Distribution(project);
    }

    /** The supply, then the panels in the project's order, then its further nodes. */
    public List<Point> points() {
        return points;
    }

    /** The point that a panel of this project is. */
    public Point of(Panel panel) {
        return points.get(panels.get(panel.id()));
    }

    /** The point of that name; empty where there is none. */
    public Optional<Point> point(String id) {
        return points.stream().filter(each -> each.id().equals(id)).findFirst();
    }

    /** The supply or the source that feeds a point in the end. */
    public Point top(Point point) {
        Point at = point;
        while (at.parent() >= 0) {
            at = points.get(at.parent());
        }
        return at;
    }

    /** Places of all points, each after what feeds it. */
    public int[] topDown() {
        return topDown.clone();
    }

    /** Places of this point and of all that carry its current at its own voltage: up to the next transformer or source. */
    public List<Integer> onward(int from) {
        List<Integer> path = new ArrayList<>(List.of(from));
        Point at = points.get(from);
        while (at.transformer().isEmpty() && at.parent() >= 0) {
            at = points.get(at.parent());
            path.add(at.index());
        }
        return path;
    }

    /** The supply's place or that of the source that feeds a point in the end. */
    public int root(int from) {
        int at = from;
        while (points.get(at).parent() >= 0) {
            at = points.get(at).parent();
        }
        return at;
    }

    /** Places of the transformers that a point feeds, not through another transformer. */
    List<Integer> transformersAt(int point) {
        return behindTransformers.get(point);
    }

    /** Whether anything that a point feeds is behind a transformer. */
    public boolean feedsTransformers(int point) {
        return !behindTransformers.get(point).isEmpty();
    }

    private static int[] parents(List<Raw> raw) {
        Map<String, Integer> index = new HashMap<>();
        for (int i = 0; i < raw.size(); i++) {
            index.putIfAbsent(raw.get(i).id(), i);
        }
        int[] parents = new int[raw.size()];
        parents[SUPPLY] = -1;
        for (int i = 1; i < raw.size(); i++) {
            boolean isSource =
                    raw.get(i).node().flatMap(DistributionNode::source).isPresent();
            parents[i] = isSource ? -1 : raw.get(i).fedFrom().map(index::get).orElse(SUPPLY);
        }
        return parents;
    }

    private static int[] topDown(int[] parents) {
        List<List<Integer>> fed = new ArrayList<>();
        for (int i = 0; i < parents.length; i++) {
            fed.add(new ArrayList<>());
        }
        Deque<Integer> open = new ArrayDeque<>();
        for (int i = 0; i < parents.length; i++) {
            (parents[i] < 0 ? open : fed.get(parents[i])).add(i);
        }
        List<Integer> order = new ArrayList<>();
        while (!open.isEmpty()) {
            int at = open.poll();
            order.add(at);
            open.addAll(fed.get(at));
        }
        return order.stream().mapToInt(Integer::intValue).toArray();
    }

    private static Point point(int at, Raw raw, Point parent, Project project) {
        Optional<NodeSource> source = raw.node().flatMap(DistributionNode::source);
        Optional<TransformerDraw> draw = raw.node()
                .flatMap(DistributionNode::transformer)
                .map(it -> TransformerDraw.of(it, parent.system(), parent.lineToNeutralVolts()));
        Optional<Secondary> secondary =
                raw.node().flatMap(DistributionNode::transformer).map(it -> it.secondary());
        PhaseSystem system = secondary
                .map(Secondary::system)
                .or(() -> source.map(NodeSource::system))
                .orElseGet(() -> parent == null ? project.supply().system() : parent.system());
        double volts = secondary
                .map(Secondary::lineToNeutralVolts)
                .or(() -> source.map(NodeSource::lineToNeutralVolts))
                .orElseGet(() -> parent == null ? project.supply().lineToNeutralVolts() : parent.lineToNeutralVolts());
        int origin = parent == null || draw.isPresent() ? at : parent.origin();
        return new Point(
                at,
                raw.id(),
                raw.panel(),
                raw.node(),
                parent == null ? -1 : parent.index(),
                system,
                volts,
                draw,
                origin);
    }
}
