package evenrise.solver.intake;

import evenrise.model.contract.Decimals;
import evenrise.model.project.TripCurve;
import evenrise.solver.table.HeaderWords;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The breaker that a list states for a piece: {@code 20/2}, {@code 16 A/3P}, {@code B16}, {@code C20/2P}, {@code 2 x 16A}.
 *
 * @param times so many of them, or so many poles: only the voltage tells; 1 where the list states none
 * @param poles 0 where the list does not state them
 * @param hasNeutral whether a further pole switches the neutral, as {@code 1P+N} and {@code 4P} say
 */
record StatedBreaker(int times, double amps, int poles, boolean hasNeutral, Optional<TripCurve> curve) {
    private static final String POLES = "([1-4])\\s*(?:-\\s*)?(?:p(?:oles?|ol(?:ig|aire)?s?|h)?)(\\s*\\+\\s*n)?";
    private static final Pattern DEVICE = Pattern.compile(
            "\\b(circuit breaker|breaker|mcbs?|mccb|rcbos?|ocpd|cb|ls|lss|fi/ls|fuses?|sicherung(en)?|disj(oncteur)?|courbe|curve|char|kennlinie|type|typ|tipo"
                    + "|gfci|gfi|afci|hacr|shunt ?trip|30 ?ma)\\b\\.?");
    private static final Pattern SHAPE = Pattern.compile("(?:([1-9])\\s*[x×*]\\s*)?(?:" + POLES
            + "[\\s,/-]*)?([bcdkz])?\\s*([0-9]{1,4}(?:[.,][0-9]{1,2})?)\\s*(?:at|amps?|a)?(?:[\\s,/-]*" + POLES
            + "|\\s*/\\s*([1-4])(\\s*\\+\\s*n)?)?[\\s,/-]*([bcdkz])?");

    /** Longer texts are remarks. */
    private static final int LONGEST = 40;

    /** The most that a breaker of a project may be rated. */
    private static final double MOST_AMPS = 6300;

    /** Empty where the text states none. */
    static Optional<StatedBreaker> of(String written) {
        if (written.length() > LONGEST) {
            return Optional.empty();
        }
        String text = DEVICE.matcher(HeaderWords.folded(written).replaceAll("[()]", " "))
                .replaceAll(" ")
                .replaceAll("^[\\s,;-]+|[\\s,;-]+$", "")
                .replaceAll("\\s+", " ");
        Matcher matcher = SHAPE.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        double amps = Double.parseDouble(matcher.group(5).replace(',', '.'));
        String poles = first(matcher.group(2), matcher.group(6), matcher.group(8));
        boolean hasNeutral =
                !first(matcher.group(3), matcher.group(7), matcher.group(9)).isEmpty();
        boolean isFour = poles.equals("4");
        if (!(amps > 0 && amps <= MOST_AMPS)) {
            return Optional.empty();
        }
        return Optional.of(new StatedBreaker(
                matcher.group(1) == null ? 1 : Integer.parseInt(matcher.group(1)),
                amps,
                poles.isEmpty() ? 0 : isFour ? 3 : Integer.parseInt(poles),
                hasNeutral || isFour,
                curve(first(matcher.group(4), matcher.group(10)))));
    }

    private static String first(String... texts) {
        for (String text : texts) {
            if (text != null && !text.isEmpty()) {
                return text;
            }
        }
        return "";
    }

    /** Bands K and Z are no bands of a project. */
    private static Optional<TripCurve> curve(String letter) {
        return letter.matches("[bcd]")
                ? Optional.of(TripCurve.valueOf(letter.toUpperCase(Locale.ROOT)))
                : Optional.empty();
    }

    /** {@code 2 times 16 A, 3 poles, band C}. */
    String text() {
        return (times == 1 ? "" : times + " times ") + Decimals.toThousandths(amps) + " A"
                + (poles == 0 ? "" : poles == 1 ? ", one pole" : ", " + poles + " poles")
                + (hasNeutral ? " and neutral" : "")
                + curve.map(band -> ", band " + band).orElse("");
    }

    /** Whether the text can only be meant as a breaker, and is no mere number. */
    static boolean isPlain(String written) {
        return of(written).isPresent() && !written.strip().matches("[0-9.,]+");
    }
}
