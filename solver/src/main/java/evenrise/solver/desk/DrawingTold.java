package evenrise.solver.desk;

import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobProgress;

/** Tells windows, once a second and whenever it is another, what is being drawn. */
final class DrawingTold implements JobListener {
    /** The kind of what windows are told. */
    static final String TOLD = "documents";

    private final Desk desk;
    private String last = "";

    DrawingTold(Desk desk) {
        this.desk = desk;
    }

    @Override
    public synchronized void progress(JobProgress now) {
        String words = now.words() + ", " + (long) now.elapsedSeconds() + " s";
        if (!words.equals(last)) {
            last = words;
            desk.tell(TOLD, words);
        }
    }
}
