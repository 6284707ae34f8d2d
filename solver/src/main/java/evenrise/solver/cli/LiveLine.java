package evenrise.solver.cli;

import evenrise.solver.app.JobProgress;
import java.io.PrintWriter;

/** One line of a terminal, written over and over; it fits 80 columns, so that it never wraps. */
final class LiveLine extends ProgressView {
    private static final String TO_START_AND_CLEAR = "\r\u001b[K";

    private final PrintWriter writer;
    private boolean isShown;

    LiveLine(Terminal terminal) {
        super(terminal);
        this.writer = terminal.err();
    }

    @Override
    public synchronized void progress(JobProgress progress) {
        if (isSearching(progress) || isWorthALine(progress)) {
            show(progress.line());
        }
    }

    /** What a search came to stays, all else goes. */
    @Override
    public synchronized void ended(JobProgress last) {
        if (last.search().isPresent()) {
            show(last.standing());
            writer.println();
            writer.println();
            writer.flush();
        } else {
            clear();
        }
    }

    @Override
    void clear() {
        if (isShown) {
            writer.print(TO_START_AND_CLEAR);
            writer.flush();
            isShown = false;
        }
    }

    private void show(String line) {
        writer.print(TO_START_AND_CLEAR + line);
        writer.flush();
        isShown = true;
    }
}
