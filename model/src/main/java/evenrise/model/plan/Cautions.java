package evenrise.model.plan;

import java.util.List;

/** What whoever works from a plan or a report must know first; these words go on every one of them. */
public final class Cautions {
    public static final List<String> ALL = List.of(
            "Design aid only: local code, the authority having jurisdiction and a licensed professional decide.",
            "Isolate and lock out before touching anything; a plan does not say that a conductor is dead.",
            "An emergency input in this plan is no life-safety system and replaces none.",
            "Three-phase supplies are taken as stars of four wires with an earthed neutral; nothing here holds for"
                    + " delta, high-leg, corner-grounded or IT systems.",
            "Peaks are sums of simple envelopes, from currents as the project states them; they are told at nominal"
                    + " voltage unless a voltage stands beside them; measure on site.");

    /** How a line or a row begins that says a caution in a table; our readers skip it. */
    private static final String COMMENT = "# Caution: ";

    private Cautions() {}

    /** For tables of values, which have no other place: a line each, below the last row. */
    public static List<String> comments() {
        return ALL.stream().map(each -> COMMENT + each).toList();
    }

    /** Whether the first cell of a row is one of those lines, of whatever version. */
    public static boolean isComment(String cell) {
        return cell.strip().startsWith(COMMENT.strip());
    }
}
