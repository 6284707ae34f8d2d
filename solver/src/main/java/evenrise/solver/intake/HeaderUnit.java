package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The unit that stands in a header: in brackets, or behind its words.
 *
 * @param unit in small letters
 */
record HeaderUnit(String unit) {
    /** Of single letters only W: a cord A is no current. */
    private static final Pattern BEHIND =
            Pattern.compile("(?i)(.*[\\p{L}.)])[\\s,/_-]+(kw|kva|watts?|va|amps?|hp|ma|(?-i:W))\\.?");

    /** What a draw is headed, where its unit tells which kind it is. */
    private static final Pattern DRAW = Pattern.compile(
            "((max|maximum|total|connected|rated|nominal|unit|each|electrical|running|operating|full|design|peak)"
                    + " )*(load"
                    + "|power|rating|demand|draw|consumption|input|current|last|anschlusswert|charge|puissance|carga)s?("
                    + " (each|max|maximum|total|per (unit|piece)|draw|input|demand|load|power))*");

    /** Longer texts are no headers; patterns need not look at them. */
    private static final int LONGEST = 100;

    static Optional<HeaderUnit> of(String header) {
        if (header.length() > LONGEST) {
            return Optional.empty();
        }
        Optional<String> bracketed = HeaderWords.unit(header);
        if (bracketed.isPresent()) {
            return bracketed.map(HeaderUnit::new);
        }
        Matcher behind = BEHIND.matcher(header.strip());
        return behind.matches()
                ? Optional.of(new HeaderUnit(behind.group(2).toLowerCase(Locale.ROOT)))
                : Optional.empty();
    }

    /** The words of a header without the unit. */
    static String without(String header) {
        Matcher behind = BEHIND.matcher(header.strip());
        return HeaderWords.plain(HeaderWords.unit(header).isEmpty() && behind.matches() ? behind.group(1) : header);
    }

    /** Whether words without their unit head what a piece draws. */
    static boolean saysDraw(String plain) {
        return DRAW.matcher(plain).matches();
    }

    /** Which kind of draw it measures; empty where it measures none. */
    Optional<Meaning> measured() {
        return switch (unit) {
            case "w", "kw", "mw", "watt", "watts", "hp", "ps", "cv", "ch" -> Optional.of(Meaning.WATTS);
            case "va", "kva" -> Optional.of(Meaning.VOLT_AMPS);
            case "a", "ma", "amp", "amps" -> Optional.of(Meaning.AMPS);
            default -> Optional.empty();
        };
    }
}
