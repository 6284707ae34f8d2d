package evenrise.model.event;

import evenrise.model.project.Phase;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.List;

/** Keeps the greatest current of each node. */
final class PeakKeeper {
    private final ConnectedLoads connected;
    private final double[] real;
    private final int[] phase;
    private final double[] at;
    private final double[] bound;

    PeakKeeper(ConnectedLoads connected) {
        this.connected = connected;
        int nodes = connected.nodes.size();
        real = new double[nodes];
        phase = new int[nodes];
        at = new double[nodes];
        bound = new double[nodes];
    }

    void read(double atSeconds, double[][] reals, double[][] bounds) {
        for (int node = 0; node < real.length; node++) {
            for (int p = 0; p < reals[node].length; p++) {
                if (reals[node][p] > real[node] + 1e-9) {
                    real[node] = reals[node][p];
                    phase[node] = p;
                    at[node] = atSeconds;
                }
                bound[node] = Math.max(bound[node], bounds[node][p]);
            }
        }
    }

    /** Of the supply, then of the panels in the project's order. */
    List<NodePeak> peaks() {
        List<NodePeak> peaks = new ArrayList<>();
        for (int node = 0; node < real.length; node++) {
            peaks.add(new NodePeak(
                    node == 0 ? NodeFigures.SUPPLY : connected.nodes.get(node).node(),
                    real[node],
                    Phase.values()[phase[node]],
                    at[node],
                    bound[node],
                    connected.nodes.get(node).inrushLimitAmps()));
        }
        return peaks;
    }
}
