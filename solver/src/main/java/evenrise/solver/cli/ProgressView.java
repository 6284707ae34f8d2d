package evenrise.solver.cli;

/** Shows how far a search has come. */
interface ProgressView {
    /** Shows nothing. */
    ProgressView NONE = new ProgressView() {
        @Override
        public void show(double elapsedSeconds, BestProgress best) {}

        @Override
        public void end(double elapsedSeconds, BestProgress best) {}
    };

    /** Called several times a second. */
    void show(double elapsedSeconds, BestProgress best);

    /** Called once, at the end. */
    void end(double elapsedSeconds, BestProgress best);

    /** A live line on a terminal, plain lines elsewhere, nothing where nobody wants it. */
    static ProgressView of(Terminal terminal, boolean isQuiet) {
        if (isQuiet) {
            return NONE;
        }
        return terminal.errIsScreen() ? new LiveLine(terminal.err()) : new ProgressLog(terminal.err());
    }
}
