package evenrise.solver.app;

import evenrise.solver.engine.Progress;

/**
 * How far a search has come: the best of what all its searches report.
 *
 * @param moves tried by the search that reported
 * @param objective of the best plan so far, in ampere-equivalents
 * @param hardViolations places where that plan breaks a hard rule
 * @param provenObjective what is proven that no plan can stay below, in ampere-equivalents; 0 where nothing is
 * @since 0.1.0
 */
public record SearchStanding(
        long moves,
        double objective,
        double peakInrushAmps,
        double supplyImbalancePercent,
        int hardViolations,
        double provenObjective) {

    static SearchStanding of(Progress progress) {
        return new SearchStanding(
                progress.moves(),
                progress.objective(),
                progress.peakInrushAmps(),
                progress.supplyImbalancePercent(),
                progress.hardViolations(),
                progress.provenObjective());
    }

    Progress at(double elapsedSeconds) {
        return new Progress(
                elapsedSeconds,
                moves,
                objective,
                peakInrushAmps,
                supplyImbalancePercent,
                hardViolations,
                provenObjective);
    }
}
