package evenrise.solver.cli;

/** What a command's exit code says; README.md lists them for users. */
final class ExitCode {
    /** Done, and no hard rule is broken. */
    static final int DONE = 0;
    /** An unexpected failure: a bug. */
    static final int BUG = 1;
    /** The command line is not understood. */
    static final int USAGE = 2;
    /** An input file is missing, unreadable or not what the contract says. */
    static final int BAD_INPUT = 3;
    /** The plan breaks hard rules. */
    static final int RULES_BROKEN = 4;
    /** An output could not be written; an earlier file is whole. */
    static final int NOT_WRITTEN = 5;
    /** Interrupted; the best plan so far is written. */
    static final int INTERRUPTED = 130;

    /** For the help of a command that reads and judges a plan. */
    static final String[] TEXTS = {
        DONE + ":done, no hard rule broken",
        BUG + ":unexpected failure (a bug in this program)",
        USAGE + ":the command line is not understood",
        BAD_INPUT + ":an input file is missing or wrong; every problem is listed",
        RULES_BROKEN + ":the plan breaks hard rules",
        NOT_WRITTEN + ":an output could not be written; an earlier file stays whole",
        INTERRUPTED + ":interrupted; the best plan so far is written"
    };

    private ExitCode() {}
}
