package evenrise.solver.sample;

import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import java.util.List;

/** Sizes and ratings, each the next common one above what a layout draws. Common practice, no source. */
final class Ratings {
    /** Stands in until the layout's currents are known. */
    static final double UNKNOWN_AMPS = 100_000;

    /** Part of a rating that continuous current may use. */
    static final double CONTINUOUS_FRACTION = 0.8;

    private static final double SPARE = 1.1;
    private static final List<Integer> SLOTS = List.of(12, 18, 24, 30, 42, 54, 66, 72, 84, 96);
    private static final List<Integer> AMPS = List.of(
            60, 80, 100, 125, 150, 200, 225, 250, 300, 400, 500, 600, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000,
            5000);
    private static final int BEYOND_STEP_AMPS = 1000;
    private static final int LIMIT_STEP_AMPS = 10;

    private Ratings() {}

    /** The smallest common panel with that many slots. */
    static int slots(int needed) {
        return SLOTS.stream().filter(slots -> slots >= needed).findFirst().orElseThrow();
    }

    /** The smallest common rating that carries the node's running current with a tenth to spare. */
    static double ratedAmps(NodeFigures node) {
        double running = node.runningAmps().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        double needed = SPARE * running / CONTINUOUS_FRACTION;
        return AMPS.stream()
                .filter(amps -> amps >= needed)
                .findFirst()
                .orElseGet(() -> roundedUp(needed, BEYOND_STEP_AMPS));
    }

    /** 2 where a neutral of the lines' size would carry nearly its rating; else 1. */
    static double neutralFactor(NodeFigures node, double ratedAmps) {
        return SPARE * node.neutralAmps() > ratedAmps ? 2 : 1;
    }

    /** An inrush limit a little above the node's greatest peak. */
    static double inrushLimitAmps(NodeFigures node) {
        double peak = node.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0);
        return roundedUp(SPARE * peak, LIMIT_STEP_AMPS);
    }

    private static int roundedUp(double amps, int step) {
        return (int) Math.ceil(amps / step) * step;
    }
}
