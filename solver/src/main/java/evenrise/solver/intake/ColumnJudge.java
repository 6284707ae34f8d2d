package evenrise.solver.intake;

import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.project.Practice;
import evenrise.solver.table.HeaderWords;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Judges by its values what a column holds whose header may mean several things: "Supply" is a voltage, a panel or a feed. */
final class ColumnJudge {
    private static final Pattern HEADERS =
            Pattern.compile("(power |mains |electrical )?(supply|supplies|source|feed|feeds)"
                    + "|fed (by|from)|supplied (by|from)|power (supply|feed|from)|connection|anschluss|einspeisung|versorgung|speisung"
                    + "|alimentation|source|alimentacion|suministro|circuit|ckt|stromkreis");

    /** What such a column may hold. */
    static final Set<Meaning> KINDS =
            EnumSet.of(Meaning.VOLTS, Meaning.FEED, Meaning.FED_FROM, Meaning.PHASES, Meaning.BREAKER, Meaning.CIRCUIT);

    private static final String USUAL_VOLTS =
            "(100|110|115|120|127|200|208|220|230|240|250|277|347|380|400|415|440|460|480|575|600|690)";
    private static final Pattern VOLTAGE =
            Pattern.compile(".*[0-9]\\s*k?v(ac|dc)?\\b.*|.*\\b[13]\\s*(~|ph\\b|ø|phase).*" + "|~\\s*[13].*|"
                    + USUAL_VOLTS + "(\\s*[-/y]+\\s*" + USUAL_VOLTS + ")?(/[13](/[56]0)?)?");
    private static final Pattern FEED = Pattern.compile("((feed|path|side|einspeisung|voie|psu) ?)?[ab]|n|none|single");
    private static final Pattern PHASES = Pattern.compile("[13]");
    private static final Pattern NUMBERED = Pattern.compile("[0-9]{1,3}([-,;/ ]+[0-9]{1,3})*");
    private static final Pattern LETTER = Pattern.compile(".*\\p{L}.*");

    /** Names of panels are short. */
    private static final int LONGEST_PANEL = 40;

    /** Below it no breaker is rated that feeds a circuit of a list: B2 is a panel. */
    private static final double LEAST_BREAKER_AMPS = 6;

    private ColumnJudge() {}

    /** Whether a header says too little. */
    static boolean isOpen(String plainHeader) {
        return HEADERS.matcher(plainHeader).matches();
    }

    /** What most of the values are; empty where none tells. */
    static Optional<Meaning> most(String plainHeader, List<String> values) {
        Map<Meaning, Integer> counts = new EnumMap<>(Meaning.class);
        values.forEach(value -> of(plainHeader, value).ifPresent(kind -> counts.merge(kind, 1, Integer::sum)));
        return counts.entrySet().stream()
                .max(Map.Entry.comparingByValue(Comparator.naturalOrder()))
                .map(Map.Entry::getKey);
    }

    /** What one value is; empty where it says nothing. */
    static Optional<Meaning> of(String plainHeader, String written) {
        String value = HeaderWords.folded(written).strip();
        if (value.isEmpty() || value.matches("[-–—]+") || LeftOpen.is(value)) {
            return Optional.empty();
        }
        boolean isCircuit = plainHeader.matches("circuit|ckt|stromkreis");
        if (FEED.matcher(value).matches() || Whereabouts.isBoth(written)) {
            return Optional.of(isCircuit ? Meaning.CIRCUIT : Meaning.FEED);
        }
        if (VOLTAGE.matcher(value).matches() && !isCircuit) {
            return Optional.of(Meaning.VOLTS);
        }
        if (isBreaker(value)) {
            return Optional.of(Meaning.BREAKER);
        }
        if (isCircuit) {
            return Optional.of(Meaning.CIRCUIT);
        }
        if (PHASES.matcher(value).matches()) {
            return Optional.of(Meaning.PHASES);
        }
        if (NUMBERED.matcher(value).matches()) {
            return Optional.of(Meaning.CIRCUIT);
        }
        return value.length() <= LONGEST_PANEL && LETTER.matcher(value).matches()
                ? Optional.of(Meaning.FED_FROM)
                : Optional.empty();
    }

    private static boolean isBreaker(String value) {
        if (!StatedBreaker.isPlain(value)) {
            return false;
        }
        StatedBreaker breaker = StatedBreaker.of(value).orElseThrow();
        return breaker.amps() >= LEAST_BREAKER_AMPS
                && (StandardRatings.isStandard(Practice.IEC, breaker.amps())
                        || StandardRatings.isStandard(Practice.NEC, breaker.amps()));
    }
}
