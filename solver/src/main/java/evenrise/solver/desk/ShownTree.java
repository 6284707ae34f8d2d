package evenrise.solver.desk;

import evenrise.model.project.Board;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Draws up what feeds what, with what each point carries. */
public final class ShownTree {
    private ShownTree() {}

    /**
     * The supply, a node or a panel.
     *
     * @param kind supply, node, transformer, source or panel
     * @param under what feeds it; empty for the supply
     * @param greatestAmps running current of the line that carries most
     * @param boards that sit in it
     * @param loads that are placed in it
     */
    public record TreePoint(
            String id,
            String kind,
            Optional<String> under,
            double lineToNeutralVolts,
            double ratedAmps,
            double greatestAmps,
            List<Phase> phases,
            double peakAmps,
            OptionalDouble inrushLimitAmps,
            List<String> boards,
            int loads) {}

    /** Every point after what feeds it. */
    public record TreeView(long revision, List<TreePoint> points) {}

    static TreeView of(JudgedState now, long revision) {
        List<Point> points = now.layout().distribution().points();
        return new TreeView(
                revision, points.stream().map(point -> view(point, points, now)).toList());
    }

    private static TreePoint view(Point point, List<Point> points, JudgedState now) {
        Project project = now.state().project();
        NodeFigures figures = now.verdict().nodes().get(point.index());
        boolean isSupply = point.panel().isEmpty() && point.node().isEmpty();
        return new TreePoint(
                point.id(),
                kind(point),
                isSupply || point.parent() < 0 || point.parent() == point.index()
                        ? Optional.empty()
                        : Optional.of(points.get(point.parent()).id()),
                point.lineToNeutralVolts(),
                isSupply ? project.supply().ratedAmps() : point.ratedAmps(),
                figures.runningAmps().values().stream()
                        .mapToDouble(each -> each)
                        .max()
                        .orElse(0),
                List.copyOf(figures.runningAmps().keySet()),
                figures.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0),
                isSupply
                        ? project.supply().inrushLimitAmps()
                        : point.panel()
                                .map(Panel::inrushLimitAmps)
                                .orElseGet(() -> point.node()
                                        .map(DistributionNode::inrushLimitAmps)
                                        .orElseThrow()),
                project.boards().stream()
                        .filter(board -> board.panel().equals(point.id()))
                        .map(Board::id)
                        .toList(),
                point.panel().map(panel -> now.layout().in(panel).size()).orElse(0));
    }

    private static String kind(Point point) {
        if (point.panel().isPresent()) {
            return "panel";
        }
        if (point.node().isEmpty()) {
            return "supply";
        }
        return point.isFurtherSource() ? "source" : point.transformer().isPresent() ? "transformer" : "node";
    }
}
