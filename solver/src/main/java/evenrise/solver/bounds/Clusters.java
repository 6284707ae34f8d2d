package evenrise.solver.bounds;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Loads with the same window and half-life and nearly the same ratio of excess to base, taken together. Only weights are
 * sought on clusters; what they prove is worked out load by load.
 */
final class Clusters {
    /** Currents of a cluster, each summed over its loads' poles and shared by the phases. */
    static final class Cluster {
        final int first;
        final int last;
        final int halfLife;
        double baseAmps;
        double excessAmps;

        Cluster(int first, int last, int halfLife) {
            this.first = first;
            this.last = last;
            this.halfLife = halfLife;
        }
    }

    private static final double RATIOS_AN_OCTAVE = 2;

    private Clusters() {}

    /** Time: loads. */
    static List<Cluster> of(BoundedProject subject, Windows windows) {
        Map<List<Integer>, Cluster> found = new LinkedHashMap<>();
        for (int i = 0; i < subject.loads.size(); i++) {
            SwitchedLoad load = subject.loads.get(i);
            int first = windows.first[i];
            int last = windows.last[i];
            double ratio = (load.excessAmps() + 1e-9) / (load.baseAmps() + 1e-6);
            int bucket = (int) Math.round(RATIOS_AN_OCTAVE * Math.log(ratio) / Math.log(2));
            Cluster cluster = found.computeIfAbsent(
                    List.of(first, last, load.halfLife(), bucket), key -> new Cluster(first, last, load.halfLife()));
            cluster.baseAmps += load.poles() * load.baseAmps() / subject.phases;
            cluster.excessAmps += load.poles() * load.excessAmps() / subject.phases;
        }
        return new ArrayList<>(found.values());
    }
}
