package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.RadialPlant;
import evenrise.model.electrical.source.TreePlant;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Impedances of the feeders whose cables are stated: of a line conductor, by panel. A neutral is taken to have that over the
 * panel's neutral factor.
 */
final class Feeders {
    private Feeders() {}

    /** What stands between sources and panels, with all sources; one of which too little is stated has no impedance. */
    static Plant behindSources(Layout layout) {
        Impedance source =
                SourceModel.of(layout.project()).flatMap(SourceModel::forDips).orElse(Impedance.ZERO);
        return plant(layout, source, true);
    }

    /** The same with sources that are stiff. */
    static Plant stiff(Layout layout) {
        return plant(layout, Impedance.ZERO, false);
    }

    private static Plant plant(Layout layout, Impedance source, boolean hasSources) {
        Project project = layout.project();
        if (!isStar(layout)) {
            return tree(layout, source, hasSources);
        }
        PhaseSystem system = project.supply().system();
        Map<String, Impedance> lines = impedances(layout);
        Map<String, LineMatrix> feeders = new LinkedHashMap<>();
        for (Panel panel : project.panels()) {
            Impedance line = lines.get(panel.id());
            if (line != null) {
                feeders.put(panel.id(), RadialPlant.feeder(system, line, line.times(1 / panel.neutralFactor())));
            }
        }
        return new RadialPlant(system, project.supply().lineToNeutralVolts(), source, feeders);
    }

    /** Whether the supply feeds every panel itself, and nothing else is there. */
    static boolean isStar(Layout layout) {
        return layout.distribution().points().stream()
                .allMatch(point -> point.node().isEmpty() && point.parent() <= Distribution.SUPPLY);
    }

    /** Points whose source is known, for dips. */
    static List<Point> behindKnownSources(Layout layout) {
        return layout.distribution().points().stream()
                .filter(point -> SourceModel.of(
                                layout.project(), layout.distribution().top(point))
                        .flatMap(SourceModel::forDips)
                        .isPresent())
                .toList();
    }

    private static Plant tree(Layout layout, Impedance source, boolean hasSources) {
        List<TreePlant.Point> points = new ArrayList<>();
        for (int index : layout.distribution().topDown()) {
            Point point = layout.distribution().points().get(index);
            points.add(new TreePlant.Point(
                    point.id(),
                    point.parent() < 0
                            ? Optional.empty()
                            : Optional.of(layout.distribution()
                                    .points()
                                    .get(point.parent())
                                    .id()),
                    point.transformer().map(TransformerDraw::lines),
                    LineValues.nominal(point.system(), point.lineToNeutralVolts()),
                    before(layout, point, source, hasSources),
                    point.panel().isPresent()));
        }
        return new TreePlant(points);
    }

    /** Between the lines of a point and what feeds it, at its own voltage. */
    private static LineMatrix before(Layout layout, Point point, Impedance source, boolean hasSources) {
        Project project = layout.project();
        if (point.parent() < 0) {
            Optional<Impedance> own = point.isSupply() || !hasSources
                    ? Optional.of(source)
                    : SourceModel.of(project, point).flatMap(SourceModel::forDips);
            LineMatrix behind = RadialPlant.behind(point.system(), own.orElse(Impedance.ZERO));
            return run(project, point)
                    .map(run -> behind.plus(line(point.system(), run.impedance(), point.neutralFactor())))
                    .orElse(behind);
        }
        Point above = layout.distribution().points().get(point.parent());
        if (point.transformer().isEmpty()) {
            return run(project, point)
                    .map(run -> line(point.system(), run.impedance(), point.neutralFactor()))
                    .orElse(LineMatrix.ZERO);
        }
        LineMatrix drawn = point.transformer().get().lines();
        LineMatrix primary = run(project, point)
                .map(run -> drawn.adjoint()
                        .times(line(above.system(), run.impedance(), 1))
                        .times(drawn))
                .orElse(LineMatrix.ZERO);
        LineMatrix own = RatedTransformer.of(point)
                .flatMap(RatedTransformer::impedance)
                .map(ohms -> RadialPlant.behind(point.system(), ohms))
                .orElse(LineMatrix.ZERO);
        return primary.plus(own)
                .plus(point.node()
                        .flatMap(DistributionNode::transformer)
                        .flatMap(Transformer::secondaryCable)
                        .flatMap(cable -> CableRun.of(project, cable, point.ratedAmps()))
                        .map(run -> line(point.system(), run.impedance(), point.neutralFactor()))
                        .orElse(LineMatrix.ZERO));
    }

    private static LineMatrix line(PhaseSystem system, Impedance line, double neutralFactor) {
        return RadialPlant.feeder(system, line, line.times(1 / neutralFactor));
    }

    /** By panel and further node. */
    static Map<String, Impedance> impedances(Layout layout) {
        Map<String, Impedance> known = new LinkedHashMap<>();
        for (Point point : layout.distribution().points()) {
            if (!point.isSupply()) {
                run(layout.project(), point).ifPresent(run -> known.put(point.id(), run.impedance()));
            }
        }
        return known;
    }

    /** Names of panels and nodes that are fed by something of which no cable is stated. */
    static List<String> bare(Layout layout) {
        return layout.distribution().points().stream()
                .filter(point -> point.parent() >= 0)
                .filter(point -> run(layout.project(), point).isEmpty())
                .map(Point::id)
                .toList();
    }

    /** Names of transformers of which too little is stated for an impedance. */
    static List<String> bareTransformers(Layout layout) {
        return layout.distribution().points().stream()
                .filter(point -> point.transformer().isPresent())
                .filter(point -> RatedTransformer.of(point)
                        .flatMap(RatedTransformer::impedance)
                        .isEmpty())
                .map(Point::id)
                .toList();
    }

    /** The feeder as it is laid; empty where its cable is not stated. */
    static Optional<CableRun> run(Project project, Point point) {
        return point.feeder()
                .flatMap(Feeder::cable)
                .flatMap(cable -> CableRun.of(
                        project,
                        cable,
                        point.feeder().orElseThrow().breakerAmps().orElse(ratedAmps(point))));
    }

    /** Whether its conductors begin at those of another feeder, with no device there. */
    static boolean isTap(Point point) {
        return point.feeder().flatMap(Feeder::tap).isPresent();
    }

    /** What the feeder of a panel or node is rated for where it says nothing: of a transformer as its primary sees it. */
    static double ratedAmps(Point point) {
        if (isTap(point) && point.main().isPresent()) {
            // No device protects it but the one that it ends in.
            return Devices.ofMain(point).orElseThrow().ratedAmps();
        }
        return point.transformer()
                .map(any -> point.ratedAmps() * RatedTransformer.primaryOverSecondary(point))
                .orElse(point.ratedAmps());
    }
}
