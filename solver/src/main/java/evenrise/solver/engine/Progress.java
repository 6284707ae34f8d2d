package evenrise.solver.engine;

import java.util.OptionalDouble;

/**
 * How far a search has come.
 *
 * @param elapsedSeconds since the call
 * @param moves tried so far by the search that reports
 * @param objective of the best plan so far, in ampere-equivalents
 * @param peakInrushAmps of that plan
 * @param supplyImbalancePercent of that plan
 * @param hardViolations places where that plan breaks a hard rule
 * @param provenObjective what is proven that no plan can stay below, in ampere-equivalents; 0 where nothing is
 */
public record Progress(
        double elapsedSeconds,
        long moves,
        double objective,
        double peakInrushAmps,
        double supplyImbalancePercent,
        int hardViolations,
        double provenObjective) {

    /** Progress of a search of which nothing is proven. */
    public Progress(
            double elapsedSeconds,
            long moves,
            double objective,
            double peakInrushAmps,
            double supplyImbalancePercent,
            int hardViolations) {
        this(elapsedSeconds, moves, objective, peakInrushAmps, supplyImbalancePercent, hardViolations, 0);
    }

    /** How far the objective is above what is proven, over the objective, in percent; only where something is. */
    public OptionalDouble gapPercent() {
        return provenObjective > 0 && hardViolations == 0 && objective > 0
                ? OptionalDouble.of(100 * Math.max(0, objective - provenObjective) / objective)
                : OptionalDouble.empty();
    }
}
