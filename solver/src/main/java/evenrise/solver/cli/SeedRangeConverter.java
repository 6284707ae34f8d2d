package evenrise.solver.cli;

import evenrise.solver.app.PortfolioRequest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a range of seeds: 7 or 1..20. */
final class SeedRangeConverter implements ITypeConverter<PortfolioRequest.Seeds> {
    private static final Pattern WORDS = Pattern.compile("([0-9]{1,9})(?:\\.\\.([0-9]{1,9}))?");

    @Override
    public PortfolioRequest.Seeds convert(String words) {
        Matcher matcher = WORDS.matcher(words.strip());
        if (!matcher.matches()) {
            throw new TypeConversionException("'" + words + "', expected a seed or a range such as 1..20");
        }
        int first = Integer.parseInt(matcher.group(1));
        int last = matcher.group(2) == null ? first : Integer.parseInt(matcher.group(2));
        try {
            return new PortfolioRequest.Seeds(first, last);
        } catch (IllegalArgumentException e) {
            throw new TypeConversionException("'" + words + "', " + e.getMessage());
        }
    }
}
