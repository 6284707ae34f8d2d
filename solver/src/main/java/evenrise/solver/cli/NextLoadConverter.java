package evenrise.solver.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads one more load: ampere, and poles after a colon. */
final class NextLoadConverter implements ITypeConverter<NextLoadConverter.Asked> {
    /** One pole unless told otherwise. */
    record Asked(double amps, int poles) {}

    private static final Pattern WORDS = Pattern.compile("([0-9]{1,5}(?:\\.[0-9]{1,4})?)(?::([123]))?");

    @Override
    public Asked convert(String words) {
        Matcher matcher = WORDS.matcher(words.strip());
        if (!matcher.matches()) {
            throw new TypeConversionException("'" + words + "', expected ampere, and poles after a colon: 16 or 16:2.");
        }
        int poles = matcher.group(2) == null ? 1 : Integer.parseInt(matcher.group(2));
        return new Asked(Double.parseDouble(matcher.group(1)), poles);
    }
}
