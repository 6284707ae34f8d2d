package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How many pieces there may be where a list does not say it exactly.
 *
 * @param listed how many are taken into the project
 * @param likely from low to high
 * @param isStated whether the list says anything of it; else low, likely and high are what is listed
 */
record OpenCount(int low, int likely, int high, int listed, boolean isStated) {
    /** As nobody says how many. */
    static final OpenCount ONE_OF_UNKNOWN = new OpenCount(1, 1, 1, 1, false);

    private static final String NUMBER = "([0-9]{1,5})";
    private static final Pattern RANGE = Pattern.compile("(?:from |between |von |zwischen |de |entre )?" + NUMBER
            + "\\s*(?:[-–—]|\\.\\.\\.?|…|to|and|bis|und|a|et|y)\\s*" + NUMBER
            + "\\s*(?:pcs|pieces|off|st|stk|stuck|no)?\\.?");
    private static final Pattern AROUND =
            Pattern.compile(NUMBER + "\\s*(?:±|\\+\\s?/\\s?-|\\+-)\\s*" + NUMBER + "\\s*(%?)");

    /** Longer texts are no counts. */
    private static final int LONGEST = 40;

    /** Of a range its most, so that nothing lacks a place; of what is around a number that number. */
    static Optional<OpenCount> of(String written) {
        String text = HeaderWords.folded(written).strip();
        if (text.length() > LONGEST) {
            return Optional.empty();
        }
        Matcher range = RANGE.matcher(text);
        if (range.matches()) {
            return between(Integer.parseInt(range.group(1)), Integer.parseInt(range.group(2)));
        }
        Matcher around = AROUND.matcher(text);
        if (around.matches()) {
            int tip = Integer.parseInt(around.group(1));
            double off = Double.parseDouble(around.group(2));
            return Optional.of(within(tip, around.group(3).isEmpty() ? off : tip * off / 100));
        }
        return Optional.empty();
    }

    /** Empty where the first is more than the second, or there are none at most. */
    static Optional<OpenCount> between(int low, int high) {
        return low > high || high == 0
                ? Optional.empty()
                : Optional.of(new OpenCount(low, (low + high + 1) / 2, high, high, true));
    }

    /** About so many: at least one more or fewer. */
    static OpenCount about(int tip, double percent) {
        return within(tip, Math.max(1, tip * percent / 100));
    }

    private static OpenCount within(int tip, double off) {
        int by = (int) Math.ceil(off - 1e-9);
        return new OpenCount(Math.max(0, tip - by), tip, tip + by, tip, true);
    }

    /** Such as {@code 12 (10 to 14), 14 taken}. */
    String words() {
        return !isStated
                ? listed + ", not stated"
                : likely + " (" + low + " to " + high + ")" + (listed == likely ? "" : ", " + listed + " taken");
    }
}
