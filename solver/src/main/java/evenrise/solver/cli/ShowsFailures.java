package evenrise.solver.cli;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.JobFailed;
import evenrise.solver.report.DisplayWidth;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** Turns every failure into clear messages on standard error and an exit code. */
final class ShowsFailures implements IExecutionExceptionHandler, IParameterExceptionHandler {
    static final String DEBUG = "--debug";

    private static final int LONGEST_MESSAGE = 2_000;

    @Override
    public int handleExecutionException(Exception failure, CommandLine command, ParseResult parsed) {
        return show(failure, command.getErr(), isDebugging(parsed));
    }

    @Override
    public int handleParseException(ParameterException failure, String[] arguments) {
        CommandLine command = failure.getCommandLine();
        message(
                command.getErr(),
                failure.getMessage()
                        .replaceFirst("^Error: ", "")
                        .replaceAll("is not an? (int|long)\\b", "is no whole number"));
        if (failure instanceof UnmatchedArgumentException unmatched
                && !unmatched.getSuggestions().isEmpty()) {
            message(command.getErr(), "maybe " + String.join(" or ", unmatched.getSuggestions()) + ".");
        }
        message(command.getErr(), "'" + command.getCommandSpec().qualifiedName() + " --help' shows what there is.");
        return ExitCode.USAGE;
    }

    /** @return the exit code */
    static int show(Throwable failure, PrintWriter err, boolean isDebugging) {
        if (failure instanceof JobFailed known) {
            known.messages().forEach(each -> message(err, each));
            return ExitCode.of(known);
        }
        if (isOutOfMemory(failure)) {
            message(
                    err,
                    "the project needs more memory than this process may use. Maybe start java with -Xmx and more.");
        } else {
            message(err, "this should not have happened: " + failure + ". It is a bug; " + DEBUG + " shows where.");
        }
        if (isDebugging) {
            failure.printStackTrace(err);
        }
        err.flush();
        return ExitCode.BUG;
    }

    private static boolean isOutOfMemory(Throwable failure) {
        return failure instanceof OutOfMemoryError || failure.getCause() != null && isOutOfMemory(failure.getCause());
    }

    /** One line, so that a shell's tools find it whole. */
    static void message(PrintWriter err, String text) {
        err.println("evenrise: " + DisplayWidth.cut(Harmless.shown(text), LONGEST_MESSAGE));
        err.flush();
    }

    private static boolean isDebugging(ParseResult parsed) {
        return parsed.originalArgs().contains(DEBUG);
    }
}
