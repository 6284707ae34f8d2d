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

    /** Moves for the square of each load from which a budget is long enough for all heat. */
    private static final double WHOLE_PER_SQUARE = 10;

    /** Less heat than this brought nothing more, however large the project. */
    private static final double LEAST_PART = 0.1;

    private final double start;
    private final double gentle;
    private final double wholeMoves;
    private final boolean isPlain;

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
        isPlain = compiled.isPlain() && !compiled.isSmall();
        gentle = isPlain ? GENTLE_OF_PLAIN : GENTLE;
        wholeMoves = WHOLE_PER_SQUARE * compiled.loadCount() * compiled.loadCount();
        start = Math.max(1e-6, scale * (PER_LOAD + PER_CELL / cells));
    }

    /** The same of an annealing that keeps what is good already. */
    double gentle(double used) {
        return start * gentle * Math.pow(SPAN * gentle, -used);
    }

    /** Part of the heat at which the annealings of a budget of so many moves begin: what they can cool down again. */
    double part(double moves) {
        return isPlain ? Math.max(LEAST_PART, Math.min(1, moves / wholeMoves)) : 1;
    }

    /** Temperature after a part of the budget is used, from 0 to 1. */
    public double temperature(double used) {
        return start * Math.pow(SPAN, -used);
    }
}
