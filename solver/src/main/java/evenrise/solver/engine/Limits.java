package evenrise.solver.engine;

import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Supply;
import java.util.OptionalDouble;

/** What each node may carry; node 0 is the supply, node {@code panel + 1} a panel. */
final class Limits {
    final long[] runningNano;
    final double[] neutralNano;
    /** Infinite where the project states none. */
    final double[] inrushAmps;

    final long durationMicros;

    Limits(Project project) {
        int nodes = project.panels().size() + 1;
        runningNano = new long[nodes];
        neutralNano = new double[nodes];
        inrushAmps = new double[nodes];
        Supply supply = project.supply();
        double fraction = supply.continuousFraction();
        set(0, supply.ratedAmps(), fraction, supply.neutralFactor(), supply.inrushLimitAmps());
        for (int panel = 0; panel < project.panels().size(); panel++) {
            Panel given = project.panels().get(panel);
            set(panel + 1, given.ratedAmps(), fraction, given.neutralFactor(), given.inrushLimitAmps());
        }
        durationMicros = project.maxDurationSeconds().isPresent()
                ? Math.round(project.maxDurationSeconds().getAsDouble() * 1e6)
                : Long.MAX_VALUE;
    }

    private void set(int node, double rated, double fraction, double neutralFactor, OptionalDouble inrush) {
        runningNano[node] = Math.round(rated * fraction * Currents.NANO);
        neutralNano[node] = rated * neutralFactor * Currents.NANO;
        inrushAmps[node] = inrush.orElse(Double.POSITIVE_INFINITY);
    }
}
