package evenrise.solver.intake;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Supplies that are no star with an earthed neutral, as the words of a voltage name them. Three-phase means that star here:
 * on any other system a line has another voltage to neutral, or none, and what is planned would be wrong.
 */
final class OtherSystem {
    /** As people in the trade call the line of a delta that stands above the others. */
    private static final Pattern HIGH_LEG =
            Pattern.compile("\\b(high|wild|red|orange|stinger)[- ]?leg\\b|\\bstinger\\b|\\bdelta[- ]?high\\b");

    private static final Pattern OPEN_DELTA = Pattern.compile("\\bopen[- ]?delta\\b|\\boffenes dreieck\\b");
    private static final Pattern CORNER =
            Pattern.compile("\\bcorner[- ]?(ground(ed)?|earth(ed)?)\\b|\\bgrounded[- ]?b\\b");
    private static final Pattern DELTA = Pattern.compile(
            "\\bdelta[- ]?(supply|service|system|grounded|ungrounded)\\b|\\b[34][- ]?w(ire)?[- ]?delta\\b|\\bdelta[,"
                    + " ]*[34][- ]?w(ire)?\\b|\\bungrounded\\b");
    /** Between figures, units and marks, not a word of a sentence. */
    private static final Pattern IT = Pattern.compile(
            "\\bit[- ]?(system|supply|net|netz)\\b|\\b(regime|schema|red|system) it\\b|[0-9~v)] ?,? it$|^it("
                    + " ?[0-9].*)?$");

    /** Between this and the voltage to neutral of usual plants, the lower figure of a pair is one to neutral. */
    private static final double LEAST_TO_NEUTRAL_VOLTS = 100;

    private static final double MOST_TO_NEUTRAL_VOLTS = 130;
    private static final double TOLERANCE = 0.05;

    private OtherSystem() {}

    /** @param folded as written, in small letters without accents */
    static Optional<String> named(String folded) {
        if (HIGH_LEG.matcher(folded).find()) {
            return Optional.of("a delta with a high leg");
        }
        if (OPEN_DELTA.matcher(folded).find()) {
            return Optional.of("an open delta");
        }
        if (CORNER.matcher(folded).find()) {
            return Optional.of("a corner-grounded delta");
        }
        if (DELTA.matcher(folded).find()) {
            return Optional.of("a delta without a star's neutral");
        }
        return IT.matcher(folded).find() ? Optional.of("an IT system") : Optional.empty();
    }

    /**
     * 120/240 V on three phases is a delta whose third line stands at √3·120 = 208 V: of a star the figures differ by √3. Pairs
     * of higher voltages, such as 230/460, are windings that can be joined in two ways.
     */
    static boolean isHighLegPair(double low, double high) {
        return low >= LEAST_TO_NEUTRAL_VOLTS
                && low <= MOST_TO_NEUTRAL_VOLTS
                && Math.abs(high / low / 2 - 1) <= TOLERANCE;
    }

    /** Why it is refused. */
    static String problem(String written, String system) {
        return "'" + written + "' is " + system
                + ", which is not planned: three-phase means a star of four wires with an earthed neutral."
                + " Maybe leave it to its own supply, or list what it feeds behind a transformer.";
    }
}
