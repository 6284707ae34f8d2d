package evenrise.model.event;

import evenrise.model.rules.Upstream;
import java.util.Arrays;
import java.util.List;

/**
 * Where a load's current is seen.
 *
 * @param nodes nodes that carry it, each once
 * @param at for each place in which a part of it is: the node
 * @param phases and its phase
 * @param parts and how much of the current of one pole is there
 */
record Shares(int[] nodes, int[] at, int[] phases, double[] parts) {

    /** Of a load that draws on some phases where the way begins. */
    static Shares of(List<Upstream.At> path, int[] drawing) {
        int most = path.size() * 3;
        int[] nodes = new int[path.size()];
        int[] at = new int[most];
        int[] phases = new int[most];
        double[] parts = new double[most];
        int count = 0;
        for (int i = 0; i < path.size(); i++) {
            Upstream.At point = path.get(i);
            nodes[i] = point.point();
            for (int phase = 0; phase < point.parts().length; phase++) {
                double part = 0;
                for (int each : drawing) {
                    part += point.parts()[phase][each];
                }
                if (part > 0) {
                    at[count] = point.point();
                    phases[count] = phase;
                    parts[count++] = part;
                }
            }
        }
        return new Shares(nodes, Arrays.copyOf(at, count), Arrays.copyOf(phases, count), Arrays.copyOf(parts, count));
    }

    void addTo(double[][] sums, double amps) {
        for (int i = 0; i < at.length; i++) {
            sums[at[i]][phases[i]] += parts[i] * amps;
        }
    }
}
