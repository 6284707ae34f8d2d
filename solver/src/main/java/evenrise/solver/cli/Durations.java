package evenrise.solver.cli;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code 30s}, {@code 2m}, {@code 1m30s}, {@code 1h}, {@code 500ms}; a unit is always said. */
final class Durations implements ITypeConverter<Duration> {
    private static final Pattern PARTS =
            Pattern.compile("(?:(\\d{1,4})h)?(?:(\\d{1,6})m(?!s))?(?:(\\d{1,7}(?:\\.\\d{1,3})?)s)?(?:(\\d{1,9})ms)?");
    private static final Duration LONGEST = Duration.ofDays(7);

    @Override
    public Duration convert(String text) {
        Matcher parts = PARTS.matcher(text.strip());
        if (!parts.matches() || text.isBlank()) {
            throw new TypeConversionException("'" + text + "' is no duration. Write 30s, 2m, 1m30s or 500ms.");
        }
        Duration duration = Duration.ofHours(whole(parts.group(1)))
                .plusMinutes(whole(parts.group(2)))
                .plusMillis(Math.round(1000 * Double.parseDouble(parts.group(3) == null ? "0" : parts.group(3))))
                .plusMillis(whole(parts.group(4)));
        if (duration.isZero() || duration.compareTo(LONGEST) > 0) {
            throw new TypeConversionException("'" + text + "' is not between 1ms and 168h.");
        }
        return duration;
    }

    private static long whole(String digits) {
        return digits == null ? 0 : Long.parseLong(digits);
    }
}
