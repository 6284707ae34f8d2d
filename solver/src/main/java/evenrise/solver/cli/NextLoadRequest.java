package evenrise.solver.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One more load, as it is asked for on the command line: ampere, and poles after a colon. */
record NextLoadRequest(double amps, int poles) {
    private static final Pattern WORDS = Pattern.compile("([0-9]{1,5}(?:\\.[0-9]{1,4})?)(?::([123]))?");

    static NextLoadRequest of(String words) {
        Matcher matcher = WORDS.matcher(words.strip());
        if (!matcher.matches()) {
            throw new Failure(
                    ExitCode.USAGE,
                    "--next-load is '" + words + "', expected ampere, and poles after a colon: 16 or 16:2.");
        }
        int poles = matcher.group(2) == null ? 1 : Integer.parseInt(matcher.group(2));
        return new NextLoadRequest(Double.parseDouble(matcher.group(1)), poles);
    }
}
