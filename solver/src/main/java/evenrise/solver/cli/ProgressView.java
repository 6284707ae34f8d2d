package evenrise.solver.cli;

import evenrise.solver.app.Cancellation;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobPart;
import evenrise.solver.app.JobProgress;
import evenrise.solver.app.Stage;
import java.util.List;

/** Shows on standard error how a job goes on. This one shows no progress, only what must be said. */
class ProgressView implements JobListener {
    /** Jobs that are done sooner show nothing. */
    private static final double SOON_SECONDS = 1;

    private final Terminal terminal;

    ProgressView(Terminal terminal) {
        this.terminal = terminal;
    }

    /** A live line on a terminal, plain lines elsewhere, nothing where nobody wants it; the job ends with a signal. */
    static JobControl control(Terminal terminal, boolean isQuiet, Cancellation cancellation) {
        if (isQuiet) {
            return new JobControl(new ProgressView(terminal), cancellation);
        }
        return new JobControl(
                terminal.errIsScreen() ? new LiveLine(terminal) : new ProgressLog(terminal), cancellation);
    }

    /** The same for a job that no signal shortens. */
    static JobControl control(Terminal terminal) {
        return control(terminal, false, Cancellation.NEVER);
    }

    @Override
    public void progress(JobProgress progress) {}

    @Override
    public synchronized void note(String text) {
        clear();
        ShowsFailures.message(terminal.err(), text);
    }

    @Override
    public synchronized void part(JobPart part) {
        clear();
        terminal.print(
                terminal.err(),
                List.of(" " + part.done() + "/" + part.of() + "  " + part.name() + "  " + part.words()));
    }

    /** Takes away what is not to stay. */
    void clear() {}

    static boolean isWorthALine(JobProgress progress) {
        return progress.search().isPresent() || progress.elapsedSeconds() >= SOON_SECONDS;
    }

    static boolean isSearching(JobProgress progress) {
        return progress.stage() == Stage.SEARCHING;
    }
}
