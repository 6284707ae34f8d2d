package evenrise.solver.intake;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as people write it, with the unit beside it.
 *
 * @param unit as written, lower case; empty where there is none
 */
record Amount(double value, String unit) {
    private static final Pattern SHAPE =
            Pattern.compile("([-+]?[0-9][0-9.,' \u00a0\u202f]*(?:[eE][-+]?[0-9]+)?)\\s*([\\p{L}%Ωµ/.]*)");

    /** Empty where the text is no number with at most one unit. */
    static Optional<Amount> of(String text) {
        Matcher matcher = SHAPE.matcher(text.strip());
        if (!matcher.matches()) {
            return Optional.empty();
        }
        Optional<Double> number = number(matcher.group(1));
        return number.map(value -> new Amount(value, matcher.group(2).toLowerCase(Locale.ROOT)));
    }

    /**
     * The last of a point and a comma is the decimal mark; a lone comma before exactly three digits, or several of one kind,
     * part thousands.
     */
    private static Optional<Double> number(String written) {
        String digits = written.replaceAll("['\u00a0\u202f ]", "");
        int comma = digits.lastIndexOf(',');
        int point = digits.lastIndexOf('.');
        if (comma >= 0 && point >= 0) {
            String thousands = comma > point ? "." : ",";
            digits = digits.replace(thousands, "").replace(',', '.');
        } else if (comma >= 0) {
            boolean parts = digits.indexOf(',') != comma || digits.matches("[-+]?[1-9][0-9]{0,2},[0-9]{3}");
            digits = digits.replace(",", parts ? "" : ".");
        } else if (point >= 0 && digits.indexOf('.') != point) {
            digits = digits.replace(".", "");
        }
        try {
            double value = Double.parseDouble(digits);
            return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }
}
