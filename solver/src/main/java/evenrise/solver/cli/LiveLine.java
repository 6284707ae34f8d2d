package evenrise.solver.cli;

import evenrise.solver.app.JobProgress;
import evenrise.solver.app.SearchCurve;
import java.io.PrintWriter;
import java.util.List;

/** A line of a terminal and the curve of a search above it, written over and over; they fit 80 columns and never wrap. */
final class LiveLine extends ProgressView {
    private static final String TO_START_AND_CLEAR = "\r\u001b[K";
    private static final String CLEAR_BELOW = "\u001b[J";

    private final PrintWriter writer;
    private final boolean mayDraw;
    private final SearchCurve curve = new SearchCurve();
    private boolean isShown;
    private int rowsAbove;

    LiveLine(Terminal terminal) {
        super(terminal);
        this.writer = terminal.err();
        this.mayDraw = terminal.mayDrawErr();
    }

    @Override
    public synchronized void progress(JobProgress progress) {
        curve.add(progress);
        if (isSearching(progress) || isWorthALine(progress)) {
            show(progress.line());
        }
    }

    /** What a search came to stays, all else goes. */
    @Override
    public synchronized void ended(JobProgress last) {
        if (last.search().isPresent()) {
            curve.add(last);
            show(last.standing());
            writer.println();
            writer.println();
            writer.flush();
            isShown = false;
            rowsAbove = 0;
        } else {
            clear();
        }
    }

    @Override
    void clear() {
        if (isShown) {
            writer.print(toTop() + TO_START_AND_CLEAR + CLEAR_BELOW);
            writer.flush();
            isShown = false;
            rowsAbove = 0;
        }
    }

    private void show(String line) {
        List<String> rows = mayDraw ? curve.rows() : List.of();
        StringBuilder text = new StringBuilder(toTop());
        rows.forEach(row -> text.append(TO_START_AND_CLEAR).append(row).append(System.lineSeparator()));
        writer.print(text + TO_START_AND_CLEAR + line + (rows.size() < rowsAbove ? CLEAR_BELOW : ""));
        writer.flush();
        rowsAbove = rows.size();
        isShown = true;
    }

    private String toTop() {
        return rowsAbove > 0 ? "\u001b[" + rowsAbove + "A" : "";
    }
}
