package evenrise.solver.engine;

/**
 * How far a search has come.
 *
 * @param elapsedSeconds since the call
 * @param moves tried so far by the search that reports
 * @param objective of the best plan so far, in ampere-equivalents
 * @param peakInrushAmps of that plan
 * @param supplyImbalancePercent of that plan
 * @param hardViolations places where that plan breaks a hard rule
 */
public record Progress(
        double elapsedSeconds,
        long moves,
        double objective,
        double peakInrushAmps,
        double supplyImbalancePercent,
        int hardViolations) {}
