package evenrise.solver.cli;

import evenrise.solver.app.JobProgress;
import evenrise.solver.app.Stage;
import java.io.PrintWriter;

/**
 * Plain lines, for a file or a pipe: the first plan, then ever more seldom; and every stage that takes a while. Of a job
 * that searches nothing only what takes long: a pipe is read by programs.
 */
final class ProgressLog extends ProgressView {
    private static final double FIRST_GAP_SECONDS = 1;
    private static final double GROWTH = 1.6;
    private static final double LONGEST_GAP_SECONDS = 60;
    private static final double LONG_SECONDS = 10;

    private final PrintWriter writer;
    private Stage stage = Stage.READING;
    private double gapSeconds = FIRST_GAP_SECONDS;
    private double nextSeconds = FIRST_GAP_SECONDS;

    ProgressLog(Terminal terminal) {
        super(terminal);
        this.writer = terminal.err();
    }

    @Override
    public synchronized void progress(JobProgress progress) {
        if (progress.stage() != stage) {
            stage = progress.stage();
            gapSeconds = FIRST_GAP_SECONDS;
            nextSeconds = progress.elapsedSeconds() + (isSearching(progress) ? 0 : gapSeconds);
        }
        boolean hasNews =
                progress.search().isPresent() || !isSearching(progress) && progress.elapsedSeconds() >= LONG_SECONDS;
        if (hasNews && progress.elapsedSeconds() >= nextSeconds) {
            print(progress.line());
            nextSeconds = progress.elapsedSeconds() + gapSeconds;
            gapSeconds = Math.min(gapSeconds * GROWTH, LONGEST_GAP_SECONDS);
        }
    }

    @Override
    public synchronized void ended(JobProgress last) {
        if (last.search().isPresent()) {
            print(last.standing());
        }
    }

    private void print(String line) {
        writer.println(line);
        writer.flush();
    }
}
