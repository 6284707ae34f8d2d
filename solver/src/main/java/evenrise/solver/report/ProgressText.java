package evenrise.solver.report;

import evenrise.solver.engine.Progress;
import java.util.Locale;
import java.util.Optional;

/** One line on how far a search has come. */
public final class ProgressText {
    /** Widest line, so that it never wraps on a terminal of 80 columns. */
    static final int WIDEST = 79;

    private ProgressText() {}

    /** @param best empty as long as there is no plan; its moves are those after which it was found */
    public static String line(double elapsedSeconds, Optional<Progress> best) {
        String elapsed = elapsed(elapsedSeconds);
        if (best.isEmpty()) {
            return elapsed + "  building a first plan";
        }
        Progress progress = best.get();
        return DisplayWidth.cut(
                elapsed + "  objective " + brief(progress.objective()) + "  peak "
                        + brief(progress.peakInrushAmps()) + " A  imbalance "
                        + Numbers.fixed(
                                progress.supplyImbalancePercent(), progress.supplyImbalancePercent() < 10 ? 2 : 1)
                        + " %" + standing(progress) + "  move " + moves(progress.moves()),
                WIDEST);
    }

    /** @param doing what goes on beside a search */
    public static String line(double elapsedSeconds, String doing) {
        return DisplayWidth.cut(elapsed(elapsedSeconds) + "  " + doing, WIDEST);
    }

    /** Broken rules or, once there are none and something is proven, how far the plan is from that. */
    private static String standing(Progress progress) {
        return progress.gapPercent().isPresent()
                ? "  gap " + Numbers.fixed(progress.gapPercent().getAsDouble(), 2) + " %"
                : "  broken " + progress.hardViolations();
    }

    private static String elapsed(double seconds) {
        long whole = (long) seconds;
        return String.format(Locale.ROOT, "%2d:%02d", whole / 60, whole % 60);
    }

    private static String brief(double number) {
        return Numbers.fixed(number, number < 10_000 ? 1 : 0);
    }

    private static String moves(long moves) {
        if (moves < 10_000) {
            return Long.toString(moves);
        }
        return moves < 1_000_000
                ? Numbers.fixed(moves / 1e3, 0) + "k"
                : Numbers.fixed(moves / 1e6, moves < 100_000_000 ? 1 : 0) + "M";
    }
}
