package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Phase;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.UseCurrents;
import evenrise.solver.report.NodeUse;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * One point of the distribution: where it stands in the tree, what it is, and what it carries beside what it may.
 *
 * @param ancestorsContinue for each level above it, from the top, whether more follows below that level's point; the last
 *     is its own
 * @param kind supply, source, transformer, distribution point or panel
 * @param fedFrom empty for supply and sources
 * @param transformer what is known of it; empty where it is none
 * @param wiring what stands before it, and what it can be transferred to
 * @param fullUse rms, by phase, every load at its running current, whatever the scenes
 */
public record DistributionRow(
        NodeUse node,
        List<Boolean> ancestorsContinue,
        String kind,
        String fedFrom,
        String system,
        double lineToNeutralVolts,
        double ratedAmps,
        String transformer,
        String wiring,
        Map<Phase, Double> fullUse,
        double fullNeutralAmps) {

    /** What stands between supply and panels and feeds others, as the trade has it. */
    static final String POINT = "distribution point";

    public DistributionRow {
        ancestorsContinue = List.copyOf(ancestorsContinue);
    }

    private record Open(int point, List<Boolean> ancestors) {}

    /** Top down: each before what it feeds, in the project's order; further sources behind the supply's tree. */
    static List<DistributionRow> of(Layout layout) {
        List<NodeUse> uses = NodeUse.of(layout);
        List<Point> points = layout.distribution().points();
        Deque<Open> open = new ArrayDeque<>();
        for (int i = points.size() - 1; i >= 0; i--) {
            if (points.get(i).parent() < 0) {
                open.push(new Open(i, List.of()));
            }
        }
        List<DistributionRow> rows = new ArrayList<>();
        while (!open.isEmpty()) {
            Open at = open.pop();
            Point point = points.get(at.point());
            rows.add(of(layout, point, uses.get(at.point()), at.ancestors()));
            List<Point> fed =
                    points.stream().filter(each -> each.parent() == at.point()).toList();
            for (int i = fed.size() - 1; i >= 0; i--) {
                List<Boolean> ancestors = new ArrayList<>(at.ancestors());
                ancestors.add(i < fed.size() - 1);
                open.push(new Open(fed.get(i).index(), ancestors));
            }
        }
        return rows;
    }

    private static DistributionRow of(Layout layout, Point point, NodeUse use, List<Boolean> ancestors) {
        UseCurrents full = layout.fullUse();
        return new DistributionRow(
                use,
                ancestors,
                kind(point),
                point.parent() < 0
                        ? ""
                        : layout.distribution().points().get(point.parent()).id(),
                system(layout, point),
                point.lineToNeutralVolts(),
                point.isSupply() ? layout.project().supply().ratedAmps() : point.ratedAmps(),
                point.node()
                        .flatMap(DistributionNode::transformer)
                        .map(DistributionRow::words)
                        .orElse(""),
                wiring(point),
                full.running(point).byPhase(),
                full.neutralAmps(point));
    }

    static String kind(Point point) {
        if (point.isSupply()) {
            return "supply";
        }
        if (point.panel().isPresent()) {
            return "panel";
        }
        return point.isFurtherSource() ? "source" : point.transformer().isPresent() ? "transformer" : POINT;
    }

    /** Phases, voltage and frequency where it lives. */
    static String system(Layout layout, Point point) {
        Distribution distribution = layout.distribution();
        double hertz = distribution
                .points()
                .get(distribution.root(point.index()))
                .node()
                .flatMap(DistributionNode::source)
                .map(NodeSource::frequencyHertz)
                .orElse(layout.project().supply().frequencyHertz());
        return Cover.system(point.system(), point.lineToNeutralVolts(), hertz);
    }

    static String words(Transformer it) {
        List<String> parts = new ArrayList<>();
        it.ratedKva().ifPresent(kva -> parts.add(Unrounded.rated(kva) + " kVA"));
        parts.add(Words.word(it.connection()));
        it.impedancePercent().ifPresent(percent -> parts.add(Unrounded.rated(percent) + " %"));
        it.kFactor().ifPresent(factor -> parts.add("K-" + Unrounded.rated(factor)));
        return String.join(", ", parts);
    }

    private static String wiring(Point point) {
        List<String> parts = new ArrayList<>();
        point.feeder()
                .map(Feeder::breakerAmps)
                .filter(OptionalDouble::isPresent)
                .ifPresent(amps -> parts.add("feeder breaker " + Unrounded.amps(amps.getAsDouble())));
        point.panel()
                .flatMap(panel -> panel.alternateFedFrom())
                .or(() -> point.node().flatMap(DistributionNode::alternateFedFrom))
                .ifPresent(other -> parts.add("can be transferred to " + other));
        return String.join(", ", parts);
    }

    /** Of the phases that it has. */
    public List<String> phaseNames() {
        return node.peaks().stream().map(peak -> peak.phase().name()).toList();
    }

    /** Greatest running current over what is allowed, in the worst scene. */
    double usedPercent() {
        return 100 * greatest(node.runningAmps()) / node.runningLimitAmps();
    }

    /** The same with every load at its running current. */
    double fullUsedPercent() {
        return 100 * greatest(fullUse) / node.runningLimitAmps();
    }

    /** Apparent power at full use: currents of its phases as magnitudes add, at the nominal voltage. */
    double fullUseKva() {
        return lineToNeutralVolts
                * fullUse.values().stream().mapToDouble(Double::doubleValue).sum()
                / 1000;
    }

    private static double greatest(Map<Phase, Double> amps) {
        return amps.isEmpty() ? 0 : Collections.max(amps.values());
    }
}
