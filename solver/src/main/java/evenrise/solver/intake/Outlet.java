package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells the rating of an outlet or plug: {@code 16 A}, {@code L6-30R}, {@code 5-20P}, {@code CEE 32}. */
final class Outlet {
    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,3}");
    private static final Pattern AMPERE = Pattern.compile("(?<![0-9.,])([0-9]{1,3})\\s*a(mp(ere|s)?)?\\b");
    private static final Pattern CONFIGURATION = Pattern.compile("\\bl?[0-9]{1,2}-([0-9]{2})[pr]?\\b");
    private static final Pattern INDUSTRIAL = Pattern.compile("\\bcee ?(16|32|63|125)\\b");

    private Outlet() {}

    /** Empty where the text does not tell. */
    static OptionalDouble amps(String text) {
        String folded = HeaderWords.folded(text);
        if (NUMBER.matcher(folded).matches()) {
            return positive(folded);
        }
        for (Pattern pattern : new Pattern[] {AMPERE, CONFIGURATION, INDUSTRIAL}) {
            Matcher matcher = pattern.matcher(folded);
            if (matcher.find()) {
                return positive(matcher.group(1));
            }
        }
        return OptionalDouble.empty();
    }

    private static OptionalDouble positive(String digits) {
        double amps = Double.parseDouble(digits);
        return amps > 0 ? OptionalDouble.of(amps) : OptionalDouble.empty();
    }
}
