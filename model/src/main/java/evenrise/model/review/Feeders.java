package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import java.util.LinkedHashMap;
import java.util.Map;

/** Impedances of the feeders whose cables are stated: of a line conductor, by panel. */
final class Feeders {
    private Feeders() {}

    static Map<String, Impedance> impedances(Layout layout) {
        Map<String, Impedance> known = new LinkedHashMap<>();
        for (Panel panel : layout.project().panels()) {
            panel.feeder()
                    .flatMap(Feeder::cable)
                    .flatMap(cable -> Run.of(
                            layout.project(),
                            cable,
                            panel.feeder().orElseThrow().breakerAmps().orElse(panel.ratedAmps())))
                    .ifPresent(run -> known.put(panel.id(), run.impedance()));
        }
        return known;
    }
}
