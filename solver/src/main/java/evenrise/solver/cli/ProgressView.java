package evenrise.solver.cli;

import evenrise.solver.engine.Progress;
import java.util.function.LongSupplier;

/** Shows how far a search has come. Reports may come from several threads. */
interface ProgressView extends AutoCloseable {
    void report(Progress progress);

    @Override
    void close();

    /** A live line on a terminal, plain lines elsewhere, nothing where nobody wants it. */
    static ProgressView of(Terminal terminal, boolean isQuiet, LongSupplier nanoTime) {
        if (isQuiet) {
            return new ProgressView() {
                @Override
                public void report(Progress progress) {}

                @Override
                public void close() {}
            };
        }
        return terminal.errIsScreen()
                ? new LiveLine(terminal.err(), nanoTime).start()
                : new ProgressLog(terminal.err());
    }
}
