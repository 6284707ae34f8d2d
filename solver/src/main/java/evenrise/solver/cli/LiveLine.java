package evenrise.solver.cli;

import evenrise.solver.report.ProgressText;
import java.io.PrintWriter;

/** One line of a terminal, written over and over; it fits 80 columns, so that it never wraps. */
final class LiveLine implements ProgressView {
    private static final String TO_START_AND_CLEAR = "\r\u001b[K";

    private final PrintWriter writer;

    LiveLine(PrintWriter writer) {
        this.writer = writer;
    }

    @Override
    public void show(double elapsedSeconds, BestProgress best) {
        writer.print(TO_START_AND_CLEAR + ProgressText.line(elapsedSeconds, best.best()));
        writer.flush();
    }

    @Override
    public void end(double elapsedSeconds, BestProgress best) {
        show(elapsedSeconds, best);
        writer.println();
        writer.println();
        writer.flush();
    }
}
