package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.source.RadialPlant;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Impedances of the feeders whose cables are stated: of a line conductor, by panel. A neutral is taken to have that over the
 * panel's neutral factor.
 */
final class Feeders {
    private Feeders() {}

    /** What stands between the supply's terminals and the panels, behind a source. */
    static RadialPlant plant(Layout layout, Impedance source) {
        PhaseSystem system = layout.project().supply().system();
        Map<String, Impedance> lines = impedances(layout);
        Map<String, LineMatrix> feeders = new LinkedHashMap<>();
        for (Panel panel : layout.project().panels()) {
            Impedance line = lines.get(panel.id());
            if (line != null) {
                feeders.put(panel.id(), RadialPlant.feeder(system, line, line.times(1 / panel.neutralFactor())));
            }
        }
        return new RadialPlant(system, layout.project().supply().lineToNeutralVolts(), source, feeders);
    }

    static Map<String, Impedance> impedances(Layout layout) {
        Map<String, Impedance> known = new LinkedHashMap<>();
        for (Panel panel : layout.project().panels()) {
            run(layout.project(), layout.distribution().of(panel))
                    .ifPresent(run -> known.put(panel.id(), run.impedance()));
        }
        return known;
    }

    /** The feeder as it is laid; empty where its cable is not stated. */
    static Optional<Run> run(Project project, Point point) {
        return point.feeder()
                .flatMap(Feeder::cable)
                .flatMap(cable -> Run.of(
                        project,
                        cable,
                        point.feeder().orElseThrow().breakerAmps().orElse(ratedAmps(point))));
    }

    /** What the feeder of a panel or node is rated for where it says nothing: of a transformer as its primary sees it. */
    static double ratedAmps(Point point) {
        return point.transformer()
                .map(any -> point.ratedAmps() * RatedTransformer.primaryOverSecondary(point))
                .orElse(point.ratedAmps());
    }
}
