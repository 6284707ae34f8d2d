package evenrise.solver.cli;

import evenrise.solver.app.CompareRequest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a range of counts: 6 or 6..14. */
final class CountRangeConverter implements ITypeConverter<CompareRequest.Range> {
    private static final Pattern WORDS = Pattern.compile("([0-9]{1,4})(?:\\.\\.([0-9]{1,4}))?");

    @Override
    public CompareRequest.Range convert(String words) {
        Matcher matcher = WORDS.matcher(words.strip());
        if (!matcher.matches()) {
            throw new TypeConversionException("'" + words + "', expected a count or a range such as 6..14");
        }
        int least = Integer.parseInt(matcher.group(1));
        int most = matcher.group(2) == null ? least : Integer.parseInt(matcher.group(2));
        try {
            return new CompareRequest.Range(least, most);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException("'" + words + "', " + e.getMessage());
        }
    }
}
