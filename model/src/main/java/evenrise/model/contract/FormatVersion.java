package evenrise.model.contract;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a file says it is: {@code evenrise-project/1}, or {@code evenrise-project/1.2} where fields came in that a reader
 * of {@code /1} does not know. A minor version only adds fields that may be left out of account when that is said; what
 * changes the meaning of a field is a major one.
 *
 * @param name without the version
 * @param minor 0 where none is written
 */
public record FormatVersion(String name, int major, int minor) {
    private static final Pattern WRITTEN =
            Pattern.compile("(evenrise-[a-z]+)/([1-9][0-9]{0,3})(?:\\.(0|[1-9][0-9]{0,3}))?");

    /** Empty for what is no format of ours. */
    public static Optional<FormatVersion> of(String text) {
        Matcher written = WRITTEN.matcher(text);
        return written.matches()
                ? Optional.of(new FormatVersion(
                        written.group(1),
                        Integer.parseInt(written.group(2)),
                        written.group(3) == null ? 0 : Integer.parseInt(written.group(3))))
                : Optional.empty();
    }

    /** Whether a file that says {@code text} can be read by who knows {@code known}: one of the same major version. */
    public static boolean isRead(String text, String known) {
        FormatVersion reader = of(known).orElseThrow();
        return of(text).filter(file -> file.name.equals(reader.name) && file.major == reader.major)
                .isPresent();
    }

    /** Whether such a file may have fields that the reader does not know. */
    public static boolean isNewer(String text, String known) {
        return isRead(text, known) && of(text).orElseThrow().minor > of(known).orElseThrow().minor;
    }
}
