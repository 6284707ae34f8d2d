package evenrise.solver.app;

import evenrise.solver.engine.Progress;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;

/** Ends a search, once, as soon as what was found is enough; says why. */
final class EarlyEnd {
    /** A fall of the objective by less than this part is none: the last milliamperes never end. */
    private static final double LEAST_GAIN = 1e-4;

    private final Patience patience;
    private final Runnable stop;
    private int hardViolations = Integer.MAX_VALUE;
    private double objective = Double.POSITIVE_INFINITY;
    private double gainSeconds;
    private String why;

    EarlyEnd(Patience patience, Runnable stop) {
        this.patience = patience;
        this.stop = stop;
    }

    /** May come from any thread, of any of several searches side by side. */
    void take(Progress progress) {
        if (isEnough(progress)) {
            stop.run();
        }
    }

    /** Looks whether nothing better was found for too long. */
    void at(double elapsedSeconds) {
        if (isTooLong(elapsedSeconds)) {
            stop.run();
        }
    }

    /** Why the search ended before its time; empty where it did not. */
    synchronized Optional<String> why() {
        return Optional.ofNullable(why);
    }

    private synchronized boolean isEnough(Progress progress) {
        if (isGain(progress)) {
            hardViolations = progress.hardViolations();
            objective = progress.objective();
            gainSeconds = Math.max(gainSeconds, progress.elapsedSeconds());
        }
        OptionalDouble gap = progress.gapPercent();
        if (patience.gapPercent().isEmpty()
                || gap.isEmpty()
                || gap.getAsDouble() > patience.gapPercent().getAsDouble()) {
            return false;
        }
        return isFirst("the best plan is proven to be within " + text(Math.ceil(gap.getAsDouble() * 100) / 100)
                + " % of the best there could be");
    }

    private boolean isGain(Progress progress) {
        return progress.hardViolations() < hardViolations
                || progress.hardViolations() == hardViolations && progress.objective() < objective * (1 - LEAST_GAIN);
    }

    private synchronized boolean isTooLong(double elapsedSeconds) {
        boolean hasPlan = hardViolations < Integer.MAX_VALUE;
        if (!hasPlan || patience.withoutGain().isEmpty()) {
            return false;
        }
        double mostSeconds = seconds(patience.withoutGain().get());
        return elapsedSeconds - gainSeconds >= mostSeconds
                && isFirst("nothing better was found for " + text(mostSeconds) + " s");
    }

    private boolean isFirst(String reason) {
        boolean isFirst = why == null;
        why = isFirst ? reason : why;
        return isFirst;
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1e3;
    }

    private static String text(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
