package evenrise.solver.app;

import evenrise.solver.engine.Progress;
import java.util.Comparator;
import java.util.Optional;

/** The best of what several searches report: fewest broken rules, then the least objective; and the most moves. */
final class BestProgress {
    private static final Comparator<Progress> BETTER =
            Comparator.comparingInt(Progress::hardViolations).thenComparingDouble(Progress::objective);

    private Progress best;

    synchronized void take(Progress progress) {
        long moves = best == null ? 0 : best.moves();
        Progress better = best == null || BETTER.compare(progress, best) <= 0 ? progress : best;
        best = new Progress(
                progress.elapsedSeconds(),
                Math.max(moves, progress.moves()),
                better.objective(),
                better.peakInrushAmps(),
                better.supplyImbalancePercent(),
                better.hardViolations(),
                best == null
                        ? progress.provenObjective()
                        : Math.max(best.provenObjective(), progress.provenObjective()));
    }

    synchronized Optional<Progress> best() {
        return Optional.ofNullable(best);
    }
}
