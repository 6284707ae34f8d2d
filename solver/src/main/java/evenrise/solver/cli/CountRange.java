package evenrise.solver.cli;

import evenrise.solver.compare.Counts;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a range of counts: 6 or 6..14. */
final class CountRange implements ITypeConverter<Counts> {
    private static final Pattern WORDS = Pattern.compile("([0-9]{1,4})(?:\\.\\.([0-9]{1,4}))?");

    @Override
    public Counts convert(String words) {
        Matcher matcher = WORDS.matcher(words.strip());
        if (!matcher.matches()) {
            throw new TypeConversionException("'" + words + "', expected a count or a range such as 6..14");
        }
        int least = Integer.parseInt(matcher.group(1));
        int most = matcher.group(2) == null ? least : Integer.parseInt(matcher.group(2));
        try {
            return new Counts(least, most);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException("'" + words + "', " + e.getMessage());
        }
    }
}
