package evenrise.solver.cli;

import evenrise.model.plan.Assessment;
import evenrise.solver.app.JobFailed;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a command's exit code says; README.md lists them for users. */
final class ExitCode {
    /** Done, and no hard rule and no electrical limit is broken. */
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
    /** The plan keeps every hard rule and breaks an electrical limit; with --strict, also one that leaves a check open. */
    static final int LIMITS_BROKEN = 6;
    /** No worker of other machines can be reached, or none that may be joined. */
    static final int NO_WORKER = 7;
    /** Interrupted; the best plan so far is written, where there is one. */
    static final int INTERRUPTED = 130;

    private ExitCode() {}

    /** What a job that could not be done ends with. */
    static int of(JobFailed failure) {
        return switch (failure.reason()) {
            case REQUEST -> USAGE;
            case INPUT -> BAD_INPUT;
            case OUTPUT -> NOT_WRITTEN;
            case GRID -> NO_WORKER;
            case CANCELLED -> INTERRUPTED;
        };
    }

    /**
     * What a plan that was judged ends with.
     *
     * @param isStrict whether a check that was not made counts as one that failed
     */
    static int of(Assessment assessment, boolean isStrict) {
        if (assessment.hardRulesBroken() > 0) {
            return RULES_BROKEN;
        }
        boolean isOpen = isStrict && !assessment.isComplete();
        return assessment.limitsBroken() > 0 || isOpen ? LIMITS_BROKEN : DONE;
    }

    /** Code and meaning, for the help of a command that ends with these. */
    static Map<String, String> texts(int... codes) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (int code : codes) {
            texts.put(Integer.toString(code), text(code));
        }
        return texts;
    }

    private static String text(int code) {
        return switch (code) {
            case DONE -> "done, nothing broken of what was checked";
            case BUG -> "unexpected failure: a bug";
            case USAGE -> "the command line is not understood";
            case BAD_INPUT -> "an input file is missing or wrong; every problem is listed";
            case RULES_BROKEN -> "the plan breaks hard rules, or what a rehearsal must not see";
            case NOT_WRITTEN -> "an output could not be written; an earlier file stays whole";
            case LIMITS_BROKEN -> "the plan breaks an electrical limit; with --strict, or leaves a check open";
            case NO_WORKER -> "no worker is reached, or none that may be joined; what was found is kept";
            case INTERRUPTED -> "interrupted; the best plan so far is written, where there is one";
            default -> throw new IllegalArgumentException("no exit code " + code);
        };
    }
}
