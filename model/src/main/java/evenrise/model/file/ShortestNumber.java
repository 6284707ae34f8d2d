package evenrise.model.file;

import java.math.BigDecimal;
import java.math.MathContext;

/** Writes numbers in their shortest form that reads back as the same number, the same on every Java version. */
final class ShortestNumber {
    private ShortestNumber() {}

    /**
     * Without exponent between 1e-6 and 1e15 in size; an exponent always has its sign, which YAML wants.
     *
     * @throws IllegalArgumentException for what is not finite, which JSON cannot say
     */
    static String of(double number) {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException("not a finite number: " + number);
        }
        if (number == Math.rint(number) && Math.abs(number) < 1e15) {
            boolean minusZero = number == 0 && 1 / number < 0;
            return minusZero ? "-0.0" : Long.toString((long) number);
        }
        BigDecimal exact = new BigDecimal(number);
        BigDecimal shortest = exact;
        for (int digits = 15; digits <= 17; digits++) {
            shortest = exact.round(new MathContext(digits)).stripTrailingZeros();
            if (shortest.doubleValue() == number) {
                break;
            }
        }
        double size = Math.abs(number);
        return size >= 1e-6 && size < 1e15 ? shortest.toPlainString() : scientific(shortest);
    }

    private static String scientific(BigDecimal number) {
        String digits = number.unscaledValue().abs().toString();
        int exponent = digits.length() - 1 - number.scale();
        String rest = digits.length() == 1 ? "0" : digits.substring(1);
        return (number.signum() < 0 ? "-" : "")
                + digits.charAt(0)
                + "."
                + rest
                + "e"
                + (exponent < 0 ? "-" : "+")
                + Math.abs(exponent);
    }
}
