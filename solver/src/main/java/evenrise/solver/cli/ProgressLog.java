package evenrise.solver.cli;

import evenrise.solver.report.ProgressText;
import java.io.PrintWriter;

/** Plain lines, for a file or a pipe: the first plan, then ever more seldom. */
final class ProgressLog implements ProgressView {
    private static final double FIRST_GAP_SECONDS = 1;
    private static final double GROWTH = 1.6;
    private static final double LONGEST_GAP_SECONDS = 60;

    private final PrintWriter writer;
    private double gapSeconds = FIRST_GAP_SECONDS;
    private double nextSeconds;

    ProgressLog(PrintWriter writer) {
        this.writer = writer;
    }

    @Override
    public void show(double elapsedSeconds, BestProgress best) {
        if (best.best().isPresent() && elapsedSeconds >= nextSeconds) {
            writer.println(ProgressText.line(elapsedSeconds, best.best()));
            writer.flush();
            nextSeconds = elapsedSeconds + gapSeconds;
            gapSeconds = Math.min(gapSeconds * GROWTH, LONGEST_GAP_SECONDS);
        }
    }

    @Override
    public void end(double elapsedSeconds, BestProgress best) {
        writer.println(ProgressText.line(elapsedSeconds, best.best()));
        writer.flush();
    }
}
