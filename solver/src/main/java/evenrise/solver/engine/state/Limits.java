package evenrise.solver.engine.state;

import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import evenrise.model.rules.NodeLimits;
import java.util.Arrays;
import java.util.List;

/** What each node may carry; node 0 is the supply, node {@code panel + 1} a panel, what follows a further node. */
public final class Limits {
    public final long[] runningNano;
    /** The same, less what is to be left of it in a panel with spare. */
    public final long[] spareNano;

    public final double[] neutralNano;
    /** Infinite where the project states none. */
    final double[] inrushAmps;

    final long durationMicros;

    /** Infinite where the project states none. */
    public double supplyInrushAmps() {
        return inrushAmps[0];
    }

    /** Whether a panel or a further node may only peak so high. */
    boolean areBelowSupply() {
        return Arrays.stream(inrushAmps).skip(1).anyMatch(Double::isFinite);
    }

    Limits(Project project) {
        List<NodeLimits> limits = NodeLimits.of(project);
        int nodes = limits.size();
        runningNano = new long[nodes];
        spareNano = new long[nodes];
        neutralNano = new double[nodes];
        inrushAmps = new double[nodes];
        for (int node = 0; node < nodes; node++) {
            NodeLimits given = limits.get(node);
            runningNano[node] = Math.round(given.continuousAmps() * Currents.NANO);
            double left = node == 0 || node > project.panels().size()
                    ? 0
                    : project.spareIn(project.panels().get(node - 1))
                            .map(Spare::runningPercent)
                            .orElse(0.0);
            spareNano[node] = Math.round(given.continuousAmps() * (1 - left / 100) * Currents.NANO);
            neutralNano[node] = given.neutralAmps() * Currents.NANO;
            inrushAmps[node] = given.inrushLimitAmps().orElse(Double.POSITIVE_INFINITY);
        }
        durationMicros = project.maxDurationSeconds().isPresent()
                ? Math.round(project.maxDurationSeconds().getAsDouble() * 1e6)
                : Long.MAX_VALUE;
    }
}
