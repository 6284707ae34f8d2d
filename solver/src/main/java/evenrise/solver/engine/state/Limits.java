package evenrise.solver.engine.state;

import evenrise.model.project.Project;
import evenrise.model.rules.NodeLimits;
import java.util.List;

/** What each node may carry; node 0 is the supply, node {@code panel + 1} a panel. */
public final class Limits {
    public final long[] runningNano;
    final double[] neutralNano;
    /** Infinite where the project states none. */
    final double[] inrushAmps;

    final long durationMicros;

    Limits(Project project) {
        List<NodeLimits> limits = NodeLimits.of(project);
        int nodes = limits.size();
        runningNano = new long[nodes];
        neutralNano = new double[nodes];
        inrushAmps = new double[nodes];
        for (int node = 0; node < nodes; node++) {
            NodeLimits given = limits.get(node);
            runningNano[node] = Math.round(given.continuousAmps() * Currents.NANO);
            neutralNano[node] = given.neutralAmps() * Currents.NANO;
            inrushAmps[node] = given.inrushLimitAmps().orElse(Double.POSITIVE_INFINITY);
        }
        durationMicros = project.maxDurationSeconds().isPresent()
                ? Math.round(project.maxDurationSeconds().getAsDouble() * 1e6)
                : Long.MAX_VALUE;
    }
}
