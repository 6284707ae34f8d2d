package evenrise.solver.engine.search;

import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.solver.engine.state.CompiledProject;

/**
 * How hot an annealing begins and ends, in ampere-equivalents. What one move changes is of the order of one load's
 * currents, spread over the instants that make the norm: few instants, large changes. Found by experiment, see
 * docs/engine.md.
 */
public final class Cooling {
    private static final double PER_LOAD = 0.04;
    private static final double PER_CELL = 1;
    private static final double SPAN = 300;
    /** A gentle annealing ends as cold as the others. */
    private static final double GENTLE = 0.2;

    /** Where loads have little to do with each other, more than that loses what was found. */
    private static final double GENTLE_OF_PLAIN = 0.05;

    /** Moves for the square of each load from which an annealing is long enough for all its heat. */
    private static final double WHOLE_PER_SQUARE = 13;

    private static final double LEAST_PART = 0.05;

    private final double start;
    private final double gentle;
    private final double wholeMoves;
    private final boolean isSmall;

    public Cooling(CompiledProject compiled) {
        ObjectiveWeights weights = compiled.project.objective();
        double peaks = 0;
        double running = 0;
        for (Load load : compiled.loads) {
            peaks += load.inrushAmps();
            running += load.runningAmps();
        }
        double scale = (weights.peakInrush() * peaks + weights.panelImbalance() * running) / compiled.loadCount();
        double cells = (double) compiled.phaseCount * compiled.usefulInstants();
        gentle = compiled.isPlain() && !compiled.isSmall() ? GENTLE_OF_PLAIN : GENTLE;
        wholeMoves = WHOLE_PER_SQUARE * compiled.loadCount() * compiled.loadCount();
        isSmall = compiled.isSmall();
        start = Math.max(1e-6, scale * (PER_LOAD + PER_CELL / cells));
    }

    /** The same of an annealing that keeps what is good already. */
    double gentle(double used) {
        return start * gentle * Math.pow(SPAN * gentle, -used);
    }

    /** Part of the heat at which an annealing of so many moves begins: what it can cool down again. */
    double part(double moves) {
        return isSmall ? 1 : Math.max(LEAST_PART, Math.min(1, Math.sqrt(moves / wholeMoves)));
    }

    /** Temperature after a part of the budget is used, from 0 to 1. */
    public double temperature(double used) {
        return start * Math.pow(SPAN, -used);
    }
}
