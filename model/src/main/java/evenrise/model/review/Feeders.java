package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Impedances of the feeders whose cables are stated: of a line conductor, by panel. */
final class Feeders {
    private Feeders() {}

    static Map<String, Impedance> impedances(Layout layout) {
        Map<String, Impedance> known = new LinkedHashMap<>();
        for (Panel panel : layout.project().panels()) {
            run(layout.project(), panel).ifPresent(run -> known.put(panel.id(), run.impedance()));
        }
        return known;
    }

    /** The feeder as it is laid; empty where its cable is not stated. */
    static Optional<Run> run(Project project, Panel panel) {
        return panel.feeder()
                .flatMap(Feeder::cable)
                .flatMap(cable -> Run.of(
                        project,
                        cable,
                        panel.feeder().orElseThrow().breakerAmps().orElse(panel.ratedAmps())));
    }
}
