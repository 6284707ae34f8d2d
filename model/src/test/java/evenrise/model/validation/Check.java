package evenrise.model.validation;

import java.util.Locale;

/**
 * One published or hand-computed value and ours beside it.
 *
 * @param tolerance in words, for the page
 * @param source where the expected value comes from
 */
record Check(
        String section,
        String quantity,
        String inputs,
        String expected,
        String ours,
        String difference,
        String tolerance,
        boolean agrees,
        String source) {

    static Check number(
            String section,
            String quantity,
            String inputs,
            double expected,
            double tolerance,
            String unit,
            double ours,
            String source) {
        double difference = ours - expected;
        return new Check(
                section,
                quantity,
                inputs,
                number(expected) + " " + unit,
                number(ours) + " " + unit,
                number(difference),
                String.format(Locale.ROOT, "%.0e", tolerance),
                Math.abs(difference) <= tolerance,
                source);
    }

    static Check text(String section, String quantity, String inputs, String expected, String ours, String source) {
        boolean same = expected.equals(ours);
        return new Check(section, quantity, inputs, expected, ours, same ? "none" : "differs", "exact", same, source);
    }

    /** Four decimals, so that the last bits of a machine's cosine do not change the page. */
    private static String number(double number) {
        String text = String.format(Locale.ROOT, "%.4f", number);
        return text.equals("-0.0000") ? "0.0000" : text;
    }

    @Override
    public String toString() {
        return quantity + ": " + inputs;
    }
}
