package evenrise.solver.hardship;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What one input has shown to be wrong with us. */
record Fault(String kind, String what) {
    /** Names that only a programmer knows. */
    private static final Pattern INNER_NAMES = Pattern.compile(
            "\\b(?:java|javax|com|org|net|evenrise|io)\\.[a-z]\\w*(?:\\.\\w+)+|\\b\\w*(?:Exception|Error)\\b|\\bat [\\w.$]+\\(|@[0-9a-f]{6,8}\\b|\\[[A-Z]\\w*\\[");

    /** The place in our code where it happened tells one fault from another. */
    static Fault of(Throwable failure) {
        Throwable cause = failure;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        String place = "";
        for (StackTraceElement each : cause.getStackTrace()) {
            if (each.getClassName().startsWith("evenrise.")
                    && !each.getClassName().contains(".hardship.")) {
                place = each.toString();
                break;
            }
        }
        return new Fault(cause.getClass().getSimpleName() + " " + place, String.valueOf(cause.getMessage()));
    }

    /** A message with names that its reader cannot know. */
    static Optional<Fault> in(String message) {
        Matcher matcher = INNER_NAMES.matcher(message);
        return matcher.find()
                ? Optional.of(new Fault("names in a message", matcher.group() + " in: " + message))
                : Optional.empty();
    }
}
