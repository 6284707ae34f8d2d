package evenrise.solver.table;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as people write it, with the unit beside it.
 *
 * @param unit as written, lower case; empty where there is none
 */
public record Amount(double value, String unit) {
    private static final Pattern SHAPE =
            Pattern.compile("([-+]?[0-9][0-9.,' \u00a0\u202f]*(?:[eE][-+]?[0-9]+)?)\\s*([\\p{L}%Ωµ/.]*)");

    /** A comma or point before one or two digits, or before more than three, can only be a decimal mark. */
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[-+]?[0-9]*,([0-9]{1,2}|[0-9]{4,})(?![0-9.,]).*");

    /** Longer texts are no numbers with a unit; patterns need not look at them. */
    private static final int LONGEST = 60;

    /** The same where nothing tells whether a comma is a decimal mark. */
    public static Optional<Amount> of(String text) {
        return of(text, false);
    }

    /**
     * Empty where the text is no number with at most one unit.
     *
     * @param isCommaDecimal whether other cells of the sheet show that a comma is its decimal mark
     */
    public static Optional<Amount> of(String text, boolean isCommaDecimal) {
        Matcher matcher = SHAPE.matcher(text.strip());
        if (text.length() > LONGEST || !matcher.matches()) {
            return Optional.empty();
        }
        Optional<Double> number = number(matcher.group(1), isCommaDecimal);
        return number.map(value -> new Amount(value, matcher.group(2).toLowerCase(Locale.ROOT)));
    }

    /** Whether the text can only be read with a comma as its decimal mark. */
    public static boolean showsDecimalComma(String text) {
        return text.length() <= LONGEST && DECIMAL_COMMA.matcher(text.strip()).matches();
    }

    /**
     * The last of a point and a comma is the decimal mark. Alone before exactly three digits, the sheet's decimal mark is
     * one and the other parts thousands; several of one kind part thousands.
     */
    private static Optional<Double> number(String written, boolean isCommaDecimal) {
        String digits = written.replaceAll("['\u00a0\u202f ]", "");
        int comma = digits.lastIndexOf(',');
        int point = digits.lastIndexOf('.');
        if (comma >= 0 && point >= 0) {
            String thousands = comma > point ? "." : ",";
            digits = digits.replace(thousands, "").replace(',', '.');
        } else if (comma >= 0) {
            boolean isGrouped = digits.matches("[-+]?[1-9][0-9]{0,2},[0-9]{3}") && !isCommaDecimal;
            digits = digits.replace(",", digits.indexOf(',') != comma || isGrouped ? "" : ".");
        } else if (point >= 0) {
            boolean isGrouped = digits.matches("[-+]?[1-9][0-9]{0,2}\\.[0-9]{3}") && isCommaDecimal;
            digits = digits.indexOf('.') != point || isGrouped ? digits.replace(".", "") : digits;
        }
        try {
            double value = Double.parseDouble(digits);
            return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    /**
     * What an amount of one unit is multiplied by to be one of another; empty where the units are not of one kind.
     *
     * @param wanted a, va, w or v; empty where no unit is expected
     */
    public static Optional<Double> scale(String stated, String wanted) {
        if (wanted.isEmpty()) {
            return stated.isEmpty() || stated.matches("x|pcs?|st|stk|%|pieces?") ? Optional.of(1.0) : Optional.empty();
        }
        String bare = stated.replaceAll("(ac|rms|eff)$", "");
        if (bare.equals(wanted)
                || wanted.equals("a") && bare.matches("amps?|ampere|apk|apeak")
                || wanted.equals("w") && bare.matches("watts?")) {
            return Optional.of(1.0);
        }
        if (bare.equals("k" + wanted)) {
            return Optional.of(1000.0);
        }
        return bare.equals("m" + wanted) ? Optional.of(0.001) : Optional.empty();
    }
}
